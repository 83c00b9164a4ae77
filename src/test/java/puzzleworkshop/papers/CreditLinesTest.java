package puzzleworkshop.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.papers.InvoiceLines.Said;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CreditLinesTest {

    private static final Currency EUR = Currency.getInstance("EUR");
    private static final List<Percent> RATES = List.of(Percent.of(20), Percent.of("5.5"), Percent.ZERO);

    @Test
    void
            notes_that_take_back_an_invoice_bit_by_bit_take_back_its_tax_of_every_rate_to_the_cent_in_2_000_random_cases() {
        long seed = Seeds.from(20261127);
        Random random = new Random(seed);
        for (int i = 0; i < 2_000; i++) {
            VatMode mode = random.nextBoolean() ? VatMode.INCLUDED : VatMode.ON_TOP;
            Invoice invoice = invoice(random, mode, VatRounding.values()[random.nextInt(2)]);
            List<Invoice> papers = new ArrayList<>(List.of(invoice));
            for (int note = 0; note < 5; note++) {
                OrderAccount account = new OrderAccount(invoice.gross(), papers, List.of());
                Map<Percent, Money> amounts = new LinkedHashMap<>();
                boolean last = note == 4;
                for (VatSum.OfRate left : account.restByRate(invoice)) {
                    long cents = left.gross().amount().movePointRight(2).longValueExact();
                    amounts.put(left.rate(), Money.ofMinor(last ? cents : random.nextLong(cents + 1), EUR));
                }
                if (amounts.values().stream().anyMatch(Money::isPositive)) {
                    papers.add(note(invoice, CreditLines.of(invoice, account.restByRate(invoice), amounts, "part")));
                }
            }
            String which = "seed " + seed + ", case " + i;
            OrderAccount account = new OrderAccount(invoice.gross(), papers, List.of());
            assertThat(account.rest(invoice).isZero()).as(which).isTrue();
            for (VatSum.OfRate left : account.restByRate(invoice)) {
                assertThat(List.of(
                                left.net().isZero(),
                                left.vat().isZero(),
                                left.gross().isZero()))
                        .as(which + " at " + left.rate().hundredths())
                        .containsOnly(true);
            }
        }
    }

    /** By hand: 60.00 gross at 20 % holds 10.00 of tax, 10.00 gross at 0 % holds none. */
    @Test
    void a_part_at_one_rate_carries_the_tax_of_that_rate_whatever_line_comes_first() {
        List<Said> said = List.of(
                new Said("delivery", BigDecimal.ONE, Money.of("30.00", "EUR"), Percent.ZERO),
                new Said("puzzle", BigDecimal.ONE, Money.of("120.00", "EUR"), Percent.of(20)));
        Invoice invoice = invoice(said, VatMode.INCLUDED, VatRounding.BY_TOTAL);
        List<Invoice.Line> lines = CreditLines.of(
                invoice,
                invoice.byRate().perRate(),
                Map.of(Percent.of(20), Money.of("60.00", "EUR"), Percent.ZERO, Money.of("10.00", "EUR")),
                "part");
        assertThat(lines).hasSize(2);
        assertThat(lines.get(0).vatRate()).isEqualTo(Percent.ZERO);
        assertThat(lines.get(0).vat().isZero()).isTrue();
        assertThat(lines.get(1).vat().amount()).isEqualByComparingTo("10.00");
        assertThat(lines.get(1).net().amount()).isEqualByComparingTo("50.00");
    }

    @Test
    void an_untouched_invoice_taken_back_whole_is_mirrored_line_by_line() {
        Invoice invoice = invoice(new Random(Seeds.from(5)), VatMode.ON_TOP, VatRounding.BY_LINE);
        Map<Percent, Money> all = new LinkedHashMap<>();
        invoice.byRate().perRate().forEach(rate -> all.put(rate.rate(), rate.gross()));
        assertThat(CreditLines.of(invoice, invoice.byRate().perRate(), all, "part"))
                .isEqualTo(invoice.lines());
    }

    @Test
    void refuses_nothing_more_than_is_left_and_a_rate_that_is_not_on_the_invoice() {
        Invoice invoice = invoice(new Random(Seeds.from(6)), VatMode.INCLUDED, VatRounding.BY_TOTAL);
        VatSum.OfRate rate = invoice.byRate().perRate().getLast();
        refused(invoice, Map.of(), "papers.credit.some");
        refused(invoice, Map.of(rate.rate(), Money.zero(EUR)), "papers.credit.some");
        refused(invoice, Map.of(Percent.of(13), Money.of("1", "EUR")), "papers.credit.some");
        refused(invoice, Map.of(rate.rate(), rate.gross().plus(Money.of("0.01", "EUR"))), "papers.credit.range");
    }

    private static void refused(Invoice invoice, Map<Percent, Money> amounts, String key) {
        assertThatThrownBy(() -> CreditLines.of(invoice, invoice.byRate().perRate(), amounts, "part"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining(key);
    }

    private static Invoice invoice(Random random, VatMode mode, VatRounding rounding) {
        List<Said> said = new ArrayList<>();
        for (int n = random.nextInt(1, 7); n > 0; n--) {
            said.add(new Said(
                    "line",
                    BigDecimal.valueOf(random.nextInt(1, 30)),
                    Money.ofMinor(random.nextLong(1, 9_000), EUR),
                    RATES.get(random.nextInt(3))));
        }
        return invoice(said, mode, rounding);
    }

    private static Invoice invoice(List<Said> said, VatMode mode, VatRounding rounding) {
        VatSum whole = VatSum.of(
                said.stream()
                        .map(line -> new VatSum.Said(line.amount(), line.rate()))
                        .toList(),
                mode,
                rounding,
                EUR);
        return paper(Invoice.Series.INVOICE, Optional.empty(), InvoiceLines.of(said, whole), mode, rounding);
    }

    private static Invoice note(Invoice invoice, List<Invoice.Line> lines) {
        return paper(
                Invoice.Series.CREDIT_NOTE,
                Optional.of(invoice.id()),
                lines,
                invoice.totals().mode(),
                invoice.totals().rounding());
    }

    private static Invoice paper(
            Invoice.Series series,
            Optional<InvoiceId> corrects,
            List<Invoice.Line> lines,
            VatMode mode,
            VatRounding rounding) {
        LocalDate day = LocalDate.of(2026, 11, 27);
        return new Invoice(
                new InvoiceId(corrects.isEmpty() ? 1 : 2),
                series,
                "",
                new OrderRef(new OrderId(1), ""),
                corrects.map(of -> new Invoice.Correction(of, "")),
                day,
                day,
                new Invoice.Parties("", "", ""),
                Invoice.Totals.of(lines, mode, rounding, EUR),
                lines);
    }
}
