package puzzleworkshop.papers;

import java.time.LocalDate;
import java.util.Optional;
import org.springframework.beans.factory.BeanFactory;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.DeliveryTerms;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.rates.PriceRule;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatRates;

/** Makes orders with a price, as tests of papers need them. */
public final class SoldOrders {

    private static final Size FINISHED = Size.mm(300, 200);

    private final BeanFactory beans;

    /** Rates that the next orders' lines carry. */
    private VatRates vat = VatRates.STANDARD;

    public SoldOrders(BeanFactory beans) {
        this.beans = beans;
    }

    void rates(VatRates rates) {
        vat = rates;
    }

    public void vat(VatMode mode, VatRounding rounding) {
        RateBook book = beans.getBean(RateBook.class);
        PriceRule rule = book.rule(book.today()).withVat(mode, rounding);
        book.set(
                new PriceRule(
                        book.today(),
                        rule.method(),
                        rule.margin(),
                        rule.markup(),
                        rule.floorMargin(),
                        rule.rush(),
                        mode,
                        rounding,
                        rule.points()),
                "mara");
    }

    public Order quote(String customer, int quantity, boolean rush, Percent discount) {
        return beans.getBean(Orders.class).quote(draft(customer, quantity, rush, discount), "mara");
    }

    public OrderDraft draft(String customer, int quantity, boolean rush, Percent discount) {
        Pricing pricing = beans.getBean(Pricing.class);
        PriceQuestion typical = pricing.typical(FINISHED, 48);
        PriceQuestion question = new PriceQuestion(
                quantity,
                FINISHED,
                48,
                typical.boardCost(),
                typical.stickerArea(),
                typical.cutMinutes(),
                typical.work(),
                Money.of("4.50", "EUR"),
                Money.of("4.10", "EUR"),
                rush,
                discount,
                vat);
        LocalDate today = beans.getBean(RateBook.class).today();
        return new OrderDraft(
                Customer.newcomer(customer, "", "Quay Street 4\n24103 Northhaven"),
                quantity,
                new Puzzle(PatternSpec.of(FINISHED, new PieceGrid(8, 6), 5), IntendedAge.GROWN_UPS, true),
                new BoardKind("birch-ply", "CRAFT", Length.mm(3)),
                Optional.empty(),
                "",
                new DeliveryTerms(Optional.empty(), Optional.of(today.plusDays(9)), rush, Optional.empty()),
                question.cutMinutes(),
                new KeptPrice(question, pricing.quote(question)),
                today.plusDays(14),
                "");
    }

    public Order confirmed(String customer, int quantity) {
        Order quote = quote(customer, quantity, false, Percent.ZERO);
        return beans.getBean(Orders.class).confirm(quote.id(), quote.promised().orElseThrow(), "mara");
    }
}
