package puzzleworkshop.letters;

import java.util.List;
import java.util.Set;
import puzzleworkshop.letters.mail.Message;
import puzzleworkshop.measure.OrderId;

/**
 * A letter as it is proposed; its words may still be changed.
 *
 * @param to the customer's contact as it stands
 * @param missing fields of the wording that had nothing to say
 * @param papers that go with it
 */
public record Draft(
        OrderId order,
        LetterKind kind,
        String to,
        String subject,
        String body,
        Set<LetterField> missing,
        List<Message.Part> papers) {

    public Draft {
        missing = Set.copyOf(missing);
        papers = List.copyOf(papers);
    }

    public Draft withWords(String newSubject, String newBody) {
        return new Draft(order, kind, to, newSubject, newBody, missing, papers);
    }
}
