package puzzleworkshop.letters;

import java.util.EnumMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.delivery.returns.Complaint.Remedy;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;

/** What was decided last about a complaint: what is done, and the answer in words. */
@Component
class ComplaintFacts implements LetterFacts {

    private final Complaints complaints;
    private final Formatter figures;

    ComplaintFacts(Complaints complaints, Formatter figures) {
        this.complaints = complaints;
        this.figures = figures;
    }

    @Override
    public Map<LetterField, String> of(Order order) {
        Map<LetterField, String> facts = new EnumMap<>(LetterField.class);
        complaints.of(order.id()).stream()
                .flatMap(complaint -> complaint.decision().stream())
                .reduce((before, last) -> last)
                .ifPresent(decision -> put(decision, facts));
        return facts;
    }

    private void put(Complaint.Decision decision, Map<LetterField, String> facts) {
        if (decision.remedy() != Remedy.NOTHING) {
            facts.put(
                    LetterField.REMEDY,
                    figures.text("letters.remedy." + decision.remedy().name()));
        }
        facts.put(LetterField.ANSWER, decision.answer());
    }
}
