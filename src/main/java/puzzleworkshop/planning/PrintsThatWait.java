package puzzleworkshop.planning;

import java.util.HashMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.planning.Job.Hold;
import puzzleworkshop.printing.PrintHolds;

/** An order whose payment comes before the work is not put into a print run by itself. */
@Component
class PrintsThatWait implements PrintHolds {

    private final PaymentsAwaited payments;

    PrintsThatWait(PaymentsAwaited payments) {
        this.payments = payments;
    }

    @Override
    public Map<Long, Sentence> heldBack() {
        Map<Long, Sentence> held = new HashMap<>();
        payments.open()
                .forEach((order, since) -> held.put(order.value(), Sentence.of(Hold.For.PAYMENT.textKey(), since)));
        return held;
    }
}
