package puzzleworkshop.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.util.ReflectionUtils;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class AccountsIT {

    private static final String PASSWORD = "birch paper ink";

    @Autowired
    Accounts accounts;

    @Autowired
    AccountStore store;

    @Autowired
    OpenSessions sessions;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource dataSource;

    @BeforeEach
    void nobody_yet() {
        CleanDatabase.now(dataSource);
    }

    @Test
    void there_is_nobody_until_the_first_owner_is_made() {
        assertThat(accounts.none()).isTrue();
        accounts.makeFirstOwner("Robin", PASSWORD);
        assertThat(accounts.none()).isFalse();
        assertThat(accounts.recognise("robin", PASSWORD))
                .hasValueSatisfying(account -> assertThat(account.role()).isEqualTo(Role.OWNER));
    }

    @Test
    void of_two_who_open_the_workshop_at_once_only_one_becomes_its_owner() throws Exception {
        try (ExecutorService two = Executors.newFixedThreadPool(2)) {
            List<Callable<String>> both = List.of(() -> tryToOpen("Robin"), () -> tryToOpen("Kim"));
            List<String> ends =
                    two.invokeAll(both).stream().map(AccountsIT::get).sorted().toList();
            assertThat(ends).containsExactly("access.first.taken", "owner");
        }
        assertThat(accounts.all()).hasSize(1);
    }

    @Test
    void a_password_is_kept_as_a_bcrypt_hash_only() {
        accounts.makeFirstOwner("Robin", PASSWORD);
        assertThat(jdbc.sql("select password_hash from account")
                        .query(String.class)
                        .single())
                .startsWith("{bcrypt}$2")
                .doesNotContain(PASSWORD);
    }

    @Test
    void names_are_unique_whatever_their_capital_letters() {
        accounts.makeFirstOwner("Robin", PASSWORD);
        refused("access.name.taken", () -> accounts.add(" ROBIN ", PASSWORD, Role.MAKER));
    }

    @Test
    void weak_passwords_are_refused_with_their_reason() {
        refused("access.password.short", () -> accounts.makeFirstOwner("Robin", "short"));
        refused("access.password.long", () -> accounts.makeFirstOwner("Robin", "ä".repeat(37) + "bcd"));
        refused("access.password.weak", () -> accounts.makeFirstOwner("Robin", "aaaaaaaaaaaa"));
        refused("access.password.weak", () -> accounts.makeFirstOwner("Robin Woodward", "robin woodward"));
        refused("access.name.missing", () -> accounts.makeFirstOwner("  ", PASSWORD));
        assertThat(accounts.none()).isTrue();
    }

    @Test
    void the_last_active_owner_stays_an_active_owner() {
        Account robin = accounts.makeFirstOwner("Robin", PASSWORD);
        refused("access.owner.last", () -> accounts.deactivate(robin.id()));
        refused("access.owner.last", () -> accounts.changeRole(robin.id(), Role.MAKER));
        Account kim = accounts.add("Kim", PASSWORD, Role.OWNER);
        accounts.changeRole(robin.id(), Role.MAKER);
        refused("access.owner.last", () -> accounts.deactivate(kim.id()));
    }

    @Test
    void who_is_not_active_is_not_let_in_until_active_again() {
        accounts.makeFirstOwner("Robin", PASSWORD);
        Account kim = accounts.add("Kim", PASSWORD, Role.MAKER);
        accounts.deactivate(kim.id());
        assertThat(accounts.recognise("Kim", PASSWORD)).isEmpty();
        accounts.reactivate(kim.id());
        assertThat(accounts.recognise("Kim", PASSWORD)).isPresent();
    }

    @Test
    void a_new_password_replaces_the_old_one() {
        Account robin = accounts.makeFirstOwner("Robin", PASSWORD);
        accounts.changePassword(robin.id(), "other words in a row");
        assertThat(accounts.recognise("Robin", PASSWORD)).isEmpty();
        assertThat(accounts.recognise("Robin", "other words in a row")).isPresent();
    }

    /** Comparing takes a tenth of a second; a connection held meanwhile starves everybody else. */
    @Test
    void no_connection_is_held_while_a_password_is_compared() {
        accounts.makeFirstOwner("Robin", PASSWORD);
        List<Boolean> inTransaction = new ArrayList<>();
        Accounts watched = new Accounts(
                store,
                new DelegatingEncoder() {
                    @Override
                    public boolean matches(CharSequence raw, String hash) {
                        inTransaction.add(TransactionSynchronizationManager.isActualTransactionActive()
                                || TransactionSynchronizationManager.hasResource(dataSource));
                        return super.matches(raw, hash);
                    }
                },
                sessions);
        assertThat(watched.recognise("Robin", PASSWORD)).isPresent();
        assertThat(inTransaction).containsExactly(false);
        assertThat(AnnotatedElementUtils.hasAnnotation(
                        ReflectionUtils.findMethod(Accounts.class, "recognise", String.class, String.class),
                        Transactional.class))
                .isFalse();
    }

    private static class DelegatingEncoder implements PasswordEncoder {

        private final PasswordEncoder encoder = PasswordEncoderFactories.createDelegatingPasswordEncoder();

        @Override
        public String encode(CharSequence raw) {
            return encoder.encode(raw);
        }

        @Override
        public boolean matches(CharSequence raw, String hash) {
            return encoder.matches(raw, hash);
        }
    }

    private String tryToOpen(String name) {
        try {
            accounts.makeFirstOwner(name, PASSWORD);
            return "owner";
        } catch (Refused refused) {
            return refused.sentence().key();
        }
    }

    private static String get(Future<String> future) {
        try {
            return future.get();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private static void refused(String key, Runnable attempt) {
        assertThatThrownBy(attempt::run)
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo(key));
    }
}
