package puzzleworkshop.letters;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.papers.Debts;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** Which payment reminders are due, step by step; nobody is reminded by the program on its own. */
@Service
public class Reminders {

    private final LetterStore store;
    private final Debts debts;
    private final Workshop workshop;
    private final SignedIn signedIn;

    Reminders(LetterStore store, Debts debts, Workshop workshop, SignedIn signedIn) {
        this.store = store;
        this.debts = debts;
        this.workshop = workshop;
        this.signedIn = signedIn;
    }

    /**
     * One order whose invoice was not paid in time.
     *
     * @param next the reminder to write and the day from which; empty when all three were written
     */
    public record Overdue(
            OrderId order,
            String number,
            String customer,
            Money open,
            LocalDate dueOn,
            Optional<ReminderSteps.Due> next) {

        public boolean isDue(LocalDate today) {
            return next.map(due -> !due.from().isAfter(today)).orElse(false);
        }
    }

    /** Longest due first; nothing for anyone but an owner. */
    @Transactional(readOnly = true)
    public List<Overdue> overdue() {
        return signedIn.isOwner() ? overdue(debts.open()) : List.of();
    }

    private List<Overdue> overdue(List<Debts.Debt> open) {
        LocalDate today = workshop.today();
        Map<OrderId, LocalDate> since = new HashMap<>();
        List<Debts.Debt> late =
                open.stream().filter(debt -> debt.isOverdue(today)).toList();
        late.forEach(debt -> since.put(debt.order(), debt.dueOn().orElseThrow()));
        Map<OrderId, ReminderSteps.Written> written = store.lastReminders(since);
        ReminderSteps steps = store.reminderSteps();
        List<Overdue> overdue = new ArrayList<>();
        for (Debts.Debt debt : late) {
            LocalDate dueOn = debt.dueOn().orElseThrow();
            overdue.add(new Overdue(
                    debt.order(),
                    debt.number(),
                    debt.customer(),
                    debt.open(),
                    dueOn,
                    steps.next(dueOn, Optional.ofNullable(written.get(debt.order())))));
        }
        overdue.sort(Comparator.comparing(Overdue::dueOn));
        return overdue;
    }

    /** The reminder to write for one order now; empty when it is not overdue or all were written. */
    @Transactional(readOnly = true)
    public Optional<LetterKind> nextFor(OrderId order) {
        if (!signedIn.isOwner()) {
            return Optional.empty();
        }
        return overdue(debts.openOf(List.of(order))).stream()
                .findFirst()
                .flatMap(Overdue::next)
                .map(ReminderSteps.Due::kind);
    }
}
