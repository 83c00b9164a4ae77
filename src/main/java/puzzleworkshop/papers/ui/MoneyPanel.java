package puzzleworkshop.papers.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.AnchorTarget;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.util.Optional;
import java.util.function.Supplier;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.MoneyPapers;
import puzzleworkshop.papers.OrderAccount;
import puzzleworkshop.papers.Receipts;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.ui.PriceBar;
import puzzleworkshop.workshop.SignedIn;

/** The money of one order: what it costs and earns, quote and invoice, what was paid and what is open. */
@org.springframework.stereotype.Component
class MoneyPanel implements OrderPanel {

    private static final int AFTER_THE_SHEET = 50;

    private final Invoices invoices;
    private final Receipts receipts;
    private final MoneyPapers papers;
    private final Orders orders;
    private final RateBook book;
    private final Formatter figures;
    private final SignedIn signedIn;

    MoneyPanel(
            Invoices invoices,
            Receipts receipts,
            MoneyPapers papers,
            Orders orders,
            RateBook book,
            Formatter figures,
            SignedIn signedIn) {
        this.invoices = invoices;
        this.receipts = receipts;
        this.papers = papers;
        this.orders = orders;
        this.book = book;
        this.figures = figures;
        this.signedIn = signedIn;
    }

    @Override
    public int place() {
        return AFTER_THE_SHEET;
    }

    /** Only an owner sees money. */
    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        if (!signedIn.isOwner()) {
            return Optional.empty();
        }
        OrderAccount account = invoices.account(order);
        Section section = new Section(
                title(order, account),
                new PriceBar(figures).show(orders.keptPrice(order.id()).answer()));
        Div lines = new Div();
        lines.addClassName("papers-lines");
        account.papers().forEach(paper -> lines.add(paper(paper, account, changed)));
        account.payments().forEach(payment -> lines.add(payment(order, payment, account, changed)));
        if (order.state() != OrderState.QUOTE) {
            lines.add(
                    new Still(sum("papers.panel.due", account.due())),
                    new Still(sum("papers.panel.received", account.received())),
                    new Still(sum("papers.panel.open", account.open())));
        }
        section.add(lines, buttons(order, account, changed));
        return Optional.of(section);
    }

    /** Carries its own style sheet to whichever page it is shown on. */
    @StyleSheet("context://papers.css")
    private static final class Section extends Div {

        private Section(Component... parts) {
            super(parts);
            addClassNames("pw-section", "papers-money");
        }
    }

    private H2 title(Order order, OrderAccount account) {
        H2 title = new H2(figures.text("papers.panel"));
        if (order.state() == OrderState.QUOTE) {
            title.add(new Verdict(Verdict.Kind.WAIT, figures.text("papers.panel.quote")));
        } else if (account.isOverdue(book.today())) {
            title.add(new Verdict(Verdict.Kind.BAD, figures.text("papers.panel.overdue")));
        } else if (account.open().isZero()) {
            title.add(new Verdict(Verdict.Kind.GOOD, figures.text("papers.panel.paid")));
        } else if (account.open().isNegative()) {
            title.add(new Verdict(Verdict.Kind.WARN, figures.text("papers.panel.owed-back")));
        } else {
            title.add(new Verdict(Verdict.Kind.WAIT, figures.text("papers.panel.open-verdict")));
        }
        return title;
    }

    private Div paper(Invoice paper, OrderAccount account, Runnable changed) {
        Anchor link = pdf(
                figures.text(paper.series().textKey()) + " " + paper.number(),
                paper.number(),
                () -> papers.issued(paper.id()));
        Div row = row(link, figures.day(paper.issuedOn()), paper.owed());
        if (paper.series() == Invoice.Series.INVOICE && account.rest(paper).isPositive()) {
            Button credit = new Button(
                    figures.text("papers.panel.credit"),
                    event -> new CreditDialog(
                                    figures,
                                    paper,
                                    account.restByRate(paper),
                                    (amounts, reason) -> invoices.credit(
                                            BookingKey.seen("credit", paper.number(), account.lines()),
                                            paper.id(),
                                            amounts,
                                            reason,
                                            signedIn.name()),
                                    changed)
                            .open());
            credit.addThemeVariants(ButtonVariant.SMALL, ButtonVariant.TERTIARY);
            row.add(credit);
        }
        return row;
    }

    /** A mistyped line stays, struck through, with the line that undoes it. */
    private Div payment(Order order, Payment payment, OrderAccount account, Runnable changed) {
        String note = payment.note().isEmpty() ? "" : " · " + payment.note();
        boolean undone = account.isTakenBack(payment);
        String how = figures.day(payment.paidOn()) + " · "
                + figures.text(payment.way().textKey()) + note;
        Div row = row(
                new Span(figures.text(payment.kind().textKey())),
                undone ? how + " · " + figures.text("papers.panel.taken-back") : how,
                payment.received().negated());
        row.addClassName("papers-payment");
        row.setClassName("papers-undone", undone);
        if (!undone && !payment.kind().takesBack()) {
            Button wrong = new Button(
                    figures.text("papers.panel.mistyped"),
                    event -> new TakeBackDialog(
                                    figures,
                                    payment,
                                    why -> receipts.takeBack(
                                            BookingKey.seen("take-back", payment.number()),
                                            order.id(),
                                            payment.number(),
                                            why,
                                            signedIn.name()),
                                    changed)
                            .open());
            wrong.addThemeVariants(ButtonVariant.SMALL, ButtonVariant.TERTIARY);
            row.add(wrong);
        }
        return row;
    }

    private Markup sum(String key, Money amount) {
        return Markup.div(
                "papers-row papers-sum",
                Markup.span(figures.text(key)),
                Markup.span("pw-small", ""),
                Markup.span("papers-amount", figures.money(amount)));
    }

    private Div row(Component what, String how, Money amount) {
        Div row = new Div(
                what,
                new Still(Markup.span("pw-small", how)),
                new Still(Markup.span("papers-amount", figures.money(amount))));
        row.addClassName("papers-row");
        return row;
    }

    private Div buttons(Order order, OrderAccount account, Runnable changed) {
        Div buttons = new Div();
        buttons.addClassName("pw-row");
        buttons.add(
                pdf(figures.text("papers.panel.quote-pdf"), "quote-" + order.number(), () -> papers.quote(order.id())));
        if (!account.papers().isEmpty() || !account.payments().isEmpty()) {
            buttons.add(pdf(
                    figures.text("papers.panel.statement-pdf"),
                    "statement-" + order.number(),
                    () -> papers.statement(order.id())));
        }
        boolean taken = order.state() != OrderState.QUOTE && order.state() != OrderState.CANCELLED;
        if (taken && account.standing().isEmpty()) {
            Button issue = new Button(
                    figures.text("papers.panel.issue"),
                    event -> new IssueDialog(
                                    figures,
                                    invoices.missing(order.id()),
                                    pdf(
                                            figures.text("papers.issue.preview"),
                                            "preview-" + order.number(),
                                            () -> papers.preview(order.id())),
                                    () -> invoices.issue(
                                            BookingKey.seen("invoice", order.number(), account.lines()),
                                            order.id(),
                                            signedIn.name()),
                                    changed)
                            .open());
            issue.addThemeVariants(ButtonVariant.PRIMARY);
            buttons.add(issue);
        }
        if (order.state() != OrderState.QUOTE) {
            Money open = account.open().isPositive()
                    ? account.open()
                    : Money.zero(account.agreed().currency());
            buttons.add(new Button(
                    figures.text("papers.panel.receive"),
                    event -> new AmountDialog(
                                    figures,
                                    book.today(),
                                    AmountDialog.What.RECEIVE,
                                    open,
                                    (entry, sure) -> receive(order, account, entry, sure),
                                    changed)
                            .open()));
        }
        if (account.received().isPositive()) {
            Money back = account.open().isNegative() ? account.open().negated() : account.received();
            Button refund = new Button(
                    figures.text("papers.panel.refund"),
                    event -> new AmountDialog(
                                    figures,
                                    book.today(),
                                    AmountDialog.What.REFUND,
                                    back,
                                    (entry, sure) -> receipts.refund(
                                            BookingKey.seen("refund", order.number(), account.lines()),
                                            order.id(),
                                            entry.amount(),
                                            entry.way(),
                                            entry.day(),
                                            entry.note(),
                                            signedIn.name()),
                                    changed)
                            .open());
            refund.addThemeVariants(ButtonVariant.TERTIARY);
            buttons.add(refund);
        }
        return buttons;
    }

    private void receive(Order order, OrderAccount account, AmountDialog.Entry entry, boolean sure) {
        BookingKey key = BookingKey.seen("receive", order.number(), account.lines());
        String who = signedIn.name();
        if (sure) {
            receipts.receiveKnowingly(key, order.id(), entry.amount(), entry.way(), entry.day(), entry.note(), who);
        } else {
            receipts.receive(key, order.id(), entry.amount(), entry.way(), entry.day(), entry.note(), who);
        }
    }

    /** Opens beside the screen; the paper is set when it is asked for. */
    private Anchor pdf(String text, String name, Supplier<byte[]> content) {
        Anchor link = new Anchor(
                DownloadHandler.fromInputStream(event -> {
                            byte[] pdf = content.get();
                            return new DownloadResponse(
                                    new ByteArrayInputStream(pdf), name + ".pdf", "application/pdf", pdf.length);
                        })
                        .inline(),
                text);
        link.setTarget(AnchorTarget.BLANK);
        return link;
    }
}
