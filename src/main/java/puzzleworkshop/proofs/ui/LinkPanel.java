package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.Optional;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.proofs.CustomerWish;
import puzzleworkshop.proofs.ProofApproval;
import puzzleworkshop.proofs.ProofLink;
import puzzleworkshop.proofs.ProofWish;
import puzzleworkshop.proofs.Proofs;
import puzzleworkshop.proofs.Token;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** The customer's link on an order's page: its state, what the customer approved and what they want changed. */
@org.springframework.stereotype.Component
class LinkPanel implements OrderPanel {

    private final Proofs proofs;
    private final Workshop workshop;
    private final SignedIn signedIn;
    private final Formatter figures;

    LinkPanel(Proofs proofs, Workshop workshop, SignedIn signedIn, Formatter figures) {
        this.proofs = proofs;
        this.workshop = workshop;
        this.signedIn = signedIn;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 30;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        PageSection section = new PageSection(figures.text("proofs.panel"));
        Optional<ProofLink> link = proofs.linkOf(order.id());
        boolean open = link.map(proofs::isOpen).orElse(false);
        section.add(state(link, open));
        Optional<Token> again = proofs.shownAgain(link);
        if (open && again.isEmpty()) {
            section.add(small(figures.text("proofs.panel.lost")));
        }
        for (ProofWish wish : proofs.wishes(order.id())) {
            section.add(wish(order, wish, changed));
        }
        for (ProofApproval approval : proofs.approvals(order.id())) {
            section.add(small(figures.text(
                    "proofs.panel.approval",
                    approval.by(),
                    approval.at(),
                    approval.fingerprint().substring(0, 8))));
        }
        if (order.state() != OrderState.CANCELLED && order.state() != OrderState.CLOSED) {
            section.add(actions(order, open, again, changed));
        }
        return Optional.of(section);
    }

    private Component state(Optional<ProofLink> link, boolean open) {
        if (link.isEmpty()) {
            return small(figures.text("proofs.panel.none"));
        }
        ProofLink known = link.get();
        if (!open) {
            return small(
                    figures.text(known.withdrawnAt().isPresent() ? "proofs.panel.withdrawn" : "proofs.panel.expired"));
        }
        Verdict verdict = new Verdict(Verdict.Kind.GOOD, figures.text("proofs.panel.open"));
        Span until = new Span(figures.text("proofs.panel.until", known.expiresAt()) + " · "
                + known.seenAt()
                        .map(seen -> figures.text("proofs.panel.seen", seen))
                        .orElse(figures.text("proofs.panel.not-seen")));
        until.addClassName("pw-small");
        Div line = new Div(verdict, until);
        line.addClassName("pw-verdict-line");
        return line;
    }

    private Component wish(Order order, ProofWish wish, Runnable changed) {
        CustomerWish said = wish.wish();
        Paragraph words = new Wish(
                said.isMoreThanWords()
                        ? figures.text(
                                        "proofs.panel.wish",
                                        said.words(),
                                        said.places().size(),
                                        said.years().orElse(0))
                                .strip()
                        : said.words());
        Div note = new Div(
                words,
                small(figures.moment(wish.at())
                        + wish.settledBy()
                                .map(who -> " · " + figures.text("proofs.panel.settled", who))
                                .orElse("")));
        note.addClassName("pw-note");
        if (wish.settledBy().isEmpty()) {
            note.getElement().setAttribute("data-kind", "warn");
            if (said.isMoreThanWords() && order.mayStillChange()) {
                Button take = new Button(
                        figures.text("proofs.panel.take"),
                        click -> UI.getCurrent().navigate("orders/new/" + order.number()));
                take.addThemeVariants(ButtonVariant.TERTIARY);
                note.add(take);
            }
            Button done = new Button(figures.text("proofs.panel.settle"), click -> {
                proofs.settle(order, wish, signedIn.name());
                changed.run();
            });
            done.addThemeVariants(ButtonVariant.TERTIARY);
            note.add(done);
        }
        return note;
    }

    private Component actions(Order order, boolean open, Optional<Token> again, Runnable changed) {
        Div actions = new Div();
        actions.addClassName("pw-row");
        again.ifPresent(token -> actions.add(new Button(
                figures.text("proofs.panel.show"),
                click -> new LinkDialog(token, workshop.profile().publicUrl(), figures).open())));
        Button make = new Button(figures.text(open ? "proofs.panel.make-new" : "proofs.panel.make"), click -> {
            LinkDialog made = new LinkDialog(
                    proofs.makeLink(order.id(), signedIn.name()),
                    workshop.profile().publicUrl(),
                    figures);
            made.addOpenedChangeListener(event -> {
                if (!event.isOpened()) {
                    changed.run();
                }
            });
            made.open();
        });
        if (open) {
            make.addThemeVariants(ButtonVariant.TERTIARY);
        }
        actions.add(make);
        if (open) {
            Button withdraw = new Button(figures.text("proofs.panel.withdraw"), click -> {
                Feedback.unlessRefused(
                        figures, "proofs.panel.withdrawn-now", () -> proofs.withdrawLink(order.id(), signedIn.name()));
                changed.run();
            });
            withdraw.addThemeVariants(ButtonVariant.TERTIARY);
            actions.add(withdraw);
        }
        return actions;
    }

    private static Paragraph small(String text) {
        SmallText paragraph = new SmallText(text);
        return paragraph;
    }

    /** In the lines the customer wrote. */
    @StyleSheet("context://proofs.css")
    private static final class Wish extends Paragraph {
        Wish(String words) {
            super(words);
            addClassName("proofs-wish");
        }
    }
}
