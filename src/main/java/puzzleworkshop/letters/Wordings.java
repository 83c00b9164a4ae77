package puzzleworkshop.letters;

import java.time.Clock;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.workshop.SignedIn;

/** The words of each kind of letter: the owner's own, or the program's where there are none. */
@Service
public class Wordings {

    private final LetterStore store;
    private final Formatter figures;
    private final SignedIn signedIn;
    private final AfterCommit afterCommit;
    private final Clock clock;

    Wordings(LetterStore store, Formatter figures, SignedIn signedIn, AfterCommit afterCommit, Clock clock) {
        this.store = store;
        this.figures = figures;
        this.signedIn = signedIn;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    public Wording of(LetterKind kind) {
        return store.wording(kind).orElseGet(() -> standard(kind));
    }

    /** The program's own words. */
    public Wording standard(LetterKind kind) {
        return new Wording(
                kind,
                figures.text("letters.standard." + kind.name() + ".subject"),
                figures.text("letters.standard." + kind.name() + ".body"));
    }

    /** @throws Refused when it cannot be kept, see {@link Wording#checked()} */
    @Transactional
    public void save(Wording wording) {
        ownerOnly();
        store.save(wording.checked(), clock.instant(), signedIn.name());
        afterCommit.tell(new LettersChanged());
    }

    /** The program's words stand again. */
    @Transactional
    public void reset(LetterKind kind) {
        ownerOnly();
        store.forget(kind);
        afterCommit.tell(new LettersChanged());
    }

    public ReminderSteps reminderSteps() {
        return store.reminderSteps();
    }

    @Transactional
    public void save(ReminderSteps steps) {
        ownerOnly();
        store.save(steps);
        afterCommit.tell(new LettersChanged());
    }

    private void ownerOnly() {
        if (!signedIn.isOwner()) {
            throw new Refused("letters.owner-only");
        }
    }
}
