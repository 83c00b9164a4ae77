package puzzleworkshop.letters;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.letters.mail.Message;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.preview.PreviewRenderer;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.MoneyPapers;
import puzzleworkshop.papers.PaperSettings;

/** What goes with a letter's words: the logo, a small picture of the puzzle, papers. */
@Component
class LetterParts {

    /** Twice the width at which it is shown, for fine screens; some 20 kB. */
    private static final int FACE_PX = 480;

    private static final String LOGO = "logo";
    private static final String FACE = "puzzle.jpg";
    private static final String PDF = "application/pdf";

    private final PreviewRenderer faces;
    private final Invoices invoices;
    private final MoneyPapers papers;
    private final Formatter figures;

    LetterParts(PreviewRenderer faces, Invoices invoices, MoneyPapers papers, Formatter figures) {
        this.faces = faces;
        this.invoices = invoices;
        this.papers = papers;
        this.figures = figures;
    }

    /** @throws Refused when the paper that the letter speaks of does not exist */
    List<Message.Part> papers(Order order, LetterKind kind) {
        return switch (kind) {
            case QUOTE -> List.of(new Message.Part("quote-" + order.number() + ".pdf", PDF, papers.quote(order.id())));
            case INVOICE, FIRST_REMINDER, SECOND_REMINDER, LAST_REMINDER ->
                List.of(paper(invoices.account(order.id())
                        .standing()
                        .orElseThrow(() -> new Refused("letters.no-invoice", order.number()))));
            case CREDIT_NOTE ->
                List.of(paper(FieldValues.lastCredit(invoices.account(order.id()))
                        .orElseThrow(() -> new Refused("letters.no-credit-note", order.number()))));
            default -> List.of();
        };
    }

    private Message.Part paper(Invoice paper) {
        return new Message.Part(paper.number() + ".pdf", PDF, papers.issued(paper.id()));
    }

    Message message(Order order, String to, Draft draft) {
        List<Message.Part> pictures = new ArrayList<>();
        Optional<Message.Part> logo = logo();
        logo.ifPresent(pictures::add);
        pictures.add(face(order));
        String html = LetterHtml.of(
                draft.subject(),
                draft.body(),
                logo.map(part -> "cid:" + part.name()).orElse(""),
                figures.text("letters.logo"),
                "cid:" + FACE,
                faceWords(order));
        return new Message(to, draft.subject(), draft.body(), html, pictures, draft.papers());
    }

    /** The same page with its pictures in itself, for a screen. */
    String page(Order order, String subject, String body) {
        return LetterHtml.of(
                subject,
                body,
                logo().map(LetterParts::inside).orElse(""),
                figures.text("letters.logo"),
                inside(face(order)),
                faceWords(order));
    }

    private String faceWords(Order order) {
        return figures.text("letters.face", order.puzzle().pieces());
    }

    private Message.Part face(Order order) {
        return new Message.Part(FACE, "image/jpeg", faces.jpeg(order.puzzle(), order.picture(), FACE_PX));
    }

    private Optional<Message.Part> logo() {
        PaperSettings settings = invoices.settings();
        if (!settings.hasLogo()) {
            return Optional.empty();
        }
        boolean png = settings.logo().length > 1 && settings.logo()[1] == 'P';
        return Optional.of(
                new Message.Part(LOGO + (png ? ".png" : ".jpg"), png ? "image/png" : "image/jpeg", settings.logo()));
    }

    private static String inside(Message.Part picture) {
        return "data:" + picture.mediaType() + ";base64," + Base64.getEncoder().encodeToString(picture.content());
    }
}
