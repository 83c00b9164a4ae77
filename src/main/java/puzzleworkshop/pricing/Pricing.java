package puzzleworkshop.pricing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.cost.CostBuilder;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.pricing.cost.CostSheet;
import puzzleworkshop.pricing.cost.MaterialPrices;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.cost.StageWork;
import puzzleworkshop.pricing.rates.ListPrice;
import puzzleworkshop.pricing.rates.PriceRule;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.rates.RateSet;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** Says what an order costs and must sell for, with every figure's source; tries out what would change it. */
@Service
public class Pricing {

    /** A wavy cut is longer than the straight grid line it follows (common practice for knobs of a quarter piece). */
    private static final double KNOB_LENGTH = 1.4;

    /** Rejects can be raised in a trial up to this share. */
    private static final Percent MOST_REJECTS = Percent.of(90);

    private final RateBook book;
    private final MaterialPrices materials;
    private final Workshop workshop;
    private final ObjectProvider<OpenQuotes> quotes;

    Pricing(RateBook book, MaterialPrices materials, Workshop workshop, ObjectProvider<OpenQuotes> quotes) {
        this.book = book;
        this.materials = materials;
        this.workshop = workshop;
        this.quotes = quotes;
    }

    /** All that a price is worked out by, read once. */
    private record Terms(RateSet rates, PriceRule rule, List<ListPrice> list, MaterialPrices materials) {

        PriceAnswer answer(PriceQuestion question) {
            return answer(question, rule, list);
        }

        PriceAnswer answer(PriceQuestion question, PriceRule otherRule, List<ListPrice> otherList) {
            CostSheet making = CostBuilder.build(question, rates, materials);
            return new PriceFinder(question, making, rates, otherRule, otherList).answer();
        }
    }

    private Terms termsOn(LocalDate day) {
        return terms(book.on(day), book.rule(day));
    }

    private Terms terms(RateSet rates, PriceRule rule) {
        return new Terms(rates, rule, book.list(rates.day()), materials.remembered());
    }

    /** The price by today's rates, rule and list. */
    @Transactional(readOnly = true)
    public PriceAnswer quote(PriceQuestion question) {
        return quote(question, book.today());
    }

    /** The price by what holds on a day. */
    @Transactional(readOnly = true)
    public PriceAnswer quote(PriceQuestion question, LocalDate day) {
        return termsOn(day).answer(question);
    }

    /** The price by given rates and rule; the price list is that of the rates' day. */
    @Transactional(readOnly = true)
    public PriceAnswer quote(PriceQuestion question, RateSet rates, PriceRule rule) {
        return terms(rates, rule).answer(question);
    }

    /** The price if something were different, for each of these quantities. */
    @Transactional(readOnly = true)
    public List<PriceAnswer> tryOut(PriceQuestion question, WhatIf whatIf, int... quantities) {
        Terms today = termsOn(book.today());
        PriceRule rule = whatIf.margin().map(today.rule()::withMargin).orElse(today.rule());
        PriceQuestion tried = question.withCutMinutes(question.cutMinutes().times(whatIf.passes()));
        for (StageWork work : question.work()) {
            tried = tried.withRejects(work.stage(), scaled(work.rejects(), whatIf.rejectsFactor()));
        }
        PriceQuestion asked = tried;
        return IntStream.of(quantities)
                .mapToObj(quantity -> today.answer(asked.withQuantity(quantity), rule, today.list()))
                .toList();
    }

    /**
     * A question about a puzzle of which only size and pieces are known: board by area at the rate of new board, laser
     * by the length of a grid with knobs at the usual speed and passes. Good for price lists; an order asks with its own
     * board and its own cut.
     */
    @Transactional(readOnly = true)
    public PriceQuestion typical(Size finished, int pieces) {
        return typical(
                finished,
                pieces,
                book.on(book.today()),
                workshop.tradeNumbers(),
                workshop.stageStandards().values());
    }

    private static PriceQuestion typical(
            Size finished, int pieces, RateSet rates, TradeNumbers numbers, Collection<StageStandard> standards) {
        Money board = rates.money(RateKind.BOARD_M2)
                .times(numbers.blankFor(finished).area().toSquareMetres());
        Length cut = gridCut(finished, pieces);
        double minutes = cut.mm()
                * rates.number(RateKind.CUT_PASSES).doubleValue()
                / rates.number(RateKind.CUT_SPEED).doubleValue();
        Money nothing = Money.zero(rates.currency());
        return new PriceQuestion(
                1,
                finished,
                pieces,
                board,
                numbers.stickerFor(finished).area(),
                Minutes.of(minutes),
                stageWork(standards, pieces),
                nothing,
                nothing,
                false,
                Percent.ZERO,
                VatRates.STANDARD);
    }

    /** What the stages take of hands by the workshop's standards, for puzzles of so many pieces. */
    public List<StageWork> stageWork(int pieces) {
        return stageWork(workshop.stageStandards().values(), pieces);
    }

    private static List<StageWork> stageWork(Collection<StageStandard> standards, int pieces) {
        return standards.stream()
                .map(standard -> StageWork.of(standard, pieces))
                .toList();
    }

    /** Every line of today's price list with what it would earn. */
    @Transactional(readOnly = true)
    public List<CheckedListPrice> checkedList() {
        Terms today = termsOn(book.today());
        PriceRule byList = today.rule().withMethod(PriceRule.Method.LIST);
        TradeNumbers numbers = workshop.tradeNumbers();
        Collection<StageStandard> standards = workshop.stageStandards().values();
        return today.list().stream()
                .map(line -> {
                    PriceQuestion question = typical(line.size(), line.pieces(), today.rates(), numbers, standards);
                    return new CheckedListPrice(line, today.answer(question, byList, List.of(line)));
                })
                .toList();
    }

    /** The open quotes that would be offered at another price if these rates held. */
    @Transactional(readOnly = true)
    public List<MovedQuote> movedBy(RateSet rates) {
        Terms then = terms(rates, book.rule(rates.day()));
        return quotes.getObject().open().stream()
                .map(quote -> moved(quote, then))
                .filter(moved -> !moved.toPayNow().sameAs(moved.toPayThen()))
                .toList();
    }

    private static MovedQuote moved(OpenQuotes.OpenQuote quote, Terms terms) {
        PriceAnswer offered = quote.price().answer();
        PriceAnswer then = terms.answer(quote.price().question());
        Money feesNow = offered.costs().of(CostPart.FEES);
        Money making =
                then.costs().total().minus(then.costs().of(CostPart.FEES)).plus(feesNow);
        return new MovedQuote(
                quote.number(),
                offered.toPay(),
                then.toPay(),
                Percent.share(offered.net().minus(making), offered.net()));
    }

    /** How many puzzles like this one a month must sell to pay its fixed costs; empty when none would do. */
    @Transactional(readOnly = true)
    public OptionalLong breakEven(PriceAnswer answer) {
        Money fixed = book.on(book.today()).money(RateKind.FIXED_MONTH);
        int quantity = answer.costs().quantity();
        return BreakEven.count(
                fixed,
                answer.net().dividedBy(quantity),
                answer.costs()
                        .total()
                        .minus(answer.costs().of(CostPart.OVERHEAD))
                        .dividedBy(quantity));
    }

    /** Grid of pieces nearest to square, its inner lines longer by their knobs, and the outline. */
    private static Length gridCut(Size finished, int pieces) {
        double across = Math.max(1, Math.round(Math.sqrt(pieces * finished.aspect())));
        double down = Math.max(1, Math.round(pieces / across));
        Length inner = finished.height().times(across - 1).plus(finished.width().times(down - 1));
        return inner.times(KNOB_LENGTH).plus(finished.perimeter());
    }

    private static Percent scaled(Percent share, double factor) {
        Percent scaled = new Percent(
                share.hundredths().multiply(BigDecimal.valueOf(factor)).setScale(4, RoundingMode.HALF_UP));
        return scaled.compareTo(MOST_REJECTS) > 0 ? MOST_REJECTS : scaled;
    }
}
