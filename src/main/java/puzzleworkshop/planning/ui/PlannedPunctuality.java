package puzzleworkshop.planning.ui;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.ui.Punctuality;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.schedule.DueVerdict;
import puzzleworkshop.planning.schedule.Schedule.Outlook;

/** By the week's plan; a day that is past is late whatever the order waits for, unless it waits to be collected. */
@Component
class PlannedPunctuality implements Punctuality {

    private final WeekPlan plan;
    private final Formatter figures;

    PlannedPunctuality(WeekPlan plan, Formatter figures) {
        this.plan = plan;
        this.figures = figures;
    }

    @Override
    public Optional<Concern> of(Order order) {
        if (order.state() != OrderState.CONFIRMED) {
            return Optional.empty();
        }
        Optional<WeekPlan.Entry> entry = plan.now().of(order.id());
        if (entry.filter(WeekPlan.Entry::toBeCollected).isPresent()) {
            return Optional.empty();
        }
        Optional<Outlook> outlook = entry.map(WeekPlan.Entry::outlook);
        if (outlook.filter(look -> look.verdict() == DueVerdict.LATE).isPresent()) {
            return Optional.of(
                    concern(Verdict.Kind.BAD, DueVerdict.LATE, outlook.get().lateDays()));
        }
        LocalDate today = plan.today();
        Optional<LocalDate> past = order.promised().filter(today::isAfter);
        if (past.isPresent()) {
            return Optional.of(concern(Verdict.Kind.BAD, DueVerdict.LATE, ChronoUnit.DAYS.between(past.get(), today)));
        }
        return outlook.filter(look -> look.verdict() == DueVerdict.TIGHT)
                .map(look -> concern(Verdict.Kind.WARN, DueVerdict.TIGHT, 0));
    }

    private Concern concern(Verdict.Kind kind, DueVerdict verdict, long days) {
        return new Concern(kind, figures.text("planning.verdict." + verdict.name(), days));
    }
}
