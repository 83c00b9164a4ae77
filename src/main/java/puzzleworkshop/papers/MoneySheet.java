package puzzleworkshop.papers;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.tax.VatMode;

/**
 * What stands on a quote, an invoice or a credit note, in words, before it is set on a page.
 *
 * @param title such as Invoice 2026-0017
 * @param facts name and value pairs beside the address
 * @param seller name first, then address lines
 * @param customer name first, then address lines
 * @param lead a sentence above the lines; may be empty
 * @param lines what is sold
 * @param sums below the lines: net, tax, total, received…
 * @param notes paragraphs below: tax note, bank, terms
 * @param picture the puzzle's face as JPEG
 * @param logo PNG or JPEG
 */
record MoneySheet(
        String title,
        List<Pair> facts,
        List<String> seller,
        List<String> customer,
        String lead,
        List<Row> lines,
        VatMode vatMode,
        List<Sum> sums,
        List<Pair> notes,
        Optional<byte[]> picture,
        Optional<byte[]> logo) {

    record Pair(String name, String value) {}

    /** @param vat the tax rate of the line; printed when tax is charged */
    record Row(String what, String quantity, Money unit, Money amount, Percent vat) {}

    /** @param strong the amount that counts */
    record Sum(String name, Money amount, boolean strong) {}
}
