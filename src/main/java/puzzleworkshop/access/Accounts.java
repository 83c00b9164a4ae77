package puzzleworkshop.access;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.access.Account.AccountId;
import puzzleworkshop.measure.Refused;

/**
 * The people of the workshop. There is always at least one active owner, so that nobody locks everyone out.
 * Passwords are kept as bcrypt hashes only.
 */
@Service
public class Accounts {

    /** Shortest password, in characters; longer than NIST SP 800-63B's least of 8. */
    public static final int SHORTEST_PASSWORD = 10;

    /** What bcrypt looks at; a longer password would be cut silently. */
    private static final int LONGEST_PASSWORD_BYTES = 72;

    private static final int LONGEST_NAME = 60;

    private final AccountStore store;
    private final PasswordEncoder encoder;
    private final OpenSessions sessions;
    private final String nobodysHash;

    Accounts(AccountStore store, PasswordEncoder encoder, OpenSessions sessions) {
        this.store = store;
        this.encoder = encoder;
        this.sessions = sessions;
        this.nobodysHash = encoder.encode("a password nobody has");
    }

    /** True until the first owner's account is made. */
    public boolean none() {
        return store.isEmpty();
    }

    /** The first account. Of two people who try at once the second is refused. */
    @Transactional
    public Account makeFirstOwner(String name, String password) {
        store.lock();
        if (!store.isEmpty()) {
            throw new Refused("access.first.taken");
        }
        return add(name, password, Role.OWNER);
    }

    @Transactional
    public Account add(String name, String password, Role role) {
        String tidy = name == null ? "" : name.strip().replaceAll("\\s+", " ");
        if (tidy.isEmpty()) {
            throw new Refused("access.name.missing");
        }
        if (tidy.length() > LONGEST_NAME) {
            throw new Refused("access.name.long", LONGEST_NAME);
        }
        if (store.named(tidy).isPresent()) {
            throw new Refused("access.name.taken", tidy);
        }
        refuseWeak(tidy, password);
        try {
            return new Account(store.add(tidy, role, encoder.encode(password)), tidy, role, true);
        } catch (DuplicateKeyException someoneWasFaster) {
            throw new Refused("access.name.taken", tidy);
        }
    }

    @Transactional(readOnly = true)
    public List<Account> all() {
        return store.all();
    }

    /** Sets a new password; whoever is signed in with this account must sign in again. */
    @Transactional
    public void changePassword(AccountId id, String password) {
        Account account = known(id);
        refuseWeak(account.name(), password);
        store.setPassword(id, encoder.encode(password));
        sessions.end(id);
    }

    @Transactional
    public void deactivate(AccountId id) {
        store.lock();
        Account account = known(id);
        refuseLastOwner(account);
        store.setActive(id, false);
        sessions.end(id);
    }

    @Transactional
    public void reactivate(AccountId id) {
        known(id);
        store.setActive(id, true);
    }

    @Transactional
    public void changeRole(AccountId id, Role role) {
        store.lock();
        Account account = known(id);
        if (role != Role.OWNER) {
            refuseLastOwner(account);
        }
        store.setRole(id, role);
        sessions.end(id);
    }

    /**
     * The active account with this name and password. A wrong name takes as long to refuse as a wrong password. In no
     * transaction: while a password is compared, no connection waits for it.
     */
    Optional<Account> recognise(String name, String password) {
        Optional<AccountStore.Secret> found = store.named(name.strip());
        boolean right = encoder.matches(
                password, found.map(AccountStore.Secret::passwordHash).orElse(nobodysHash));
        return found.map(AccountStore.Secret::account).filter(account -> right && account.active());
    }

    private Account known(AccountId id) {
        return store.locked(id).orElseThrow(() -> new Refused("access.account.unknown"));
    }

    private void refuseLastOwner(Account account) {
        if (account.role() == Role.OWNER && account.active() && store.activeOwners() == 1) {
            throw new Refused("access.owner.last", account.name());
        }
    }

    private static void refuseWeak(String name, String password) {
        if (password == null || password.length() < SHORTEST_PASSWORD) {
            throw new Refused("access.password.short", SHORTEST_PASSWORD);
        }
        if (password.getBytes(StandardCharsets.UTF_8).length > LONGEST_PASSWORD_BYTES) {
            throw new Refused("access.password.long", LONGEST_PASSWORD_BYTES);
        }
        if (password.equalsIgnoreCase(name) || password.chars().distinct().count() < 4) {
            throw new Refused("access.password.weak");
        }
    }
}
