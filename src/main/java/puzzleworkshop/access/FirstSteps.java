package puzzleworkshop.access;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

/** Opens a new workshop: its owner and its profile, both or neither. */
@Service
public class FirstSteps {

    private final Accounts accounts;
    private final Workshop workshop;

    FirstSteps(Accounts accounts, Workshop workshop) {
        this.accounts = accounts;
        this.workshop = workshop;
    }

    @Transactional
    public Account open(WorkshopProfile profile, String ownersName, String password) {
        Account owner = accounts.makeFirstOwner(ownersName, password);
        workshop.save(profile);
        return owner;
    }
}
