package puzzleworkshop.papers.drawn;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Money;

/**
 * What stands on a quote, an invoice or a credit note, in words, before it is set on a page.
 *
 * @param title such as Invoice 2026-0017
 * @param facts name and value pairs beside the address
 * @param seller name first, then address lines
 * @param customer name first, then address lines
 * @param lead a sentence above the lines; may be empty
 * @param columns of the table; the first one to be read
 * @param rows of the table, a text for each column
 * @param sums below the lines: net, tax, total, received…
 * @param notes paragraphs below: tax note, bank, terms
 * @param picture the puzzle's face as JPEG
 * @param logo PNG or JPEG
 */
public record MoneySheet(
        String title,
        List<Pair> facts,
        List<String> seller,
        List<String> customer,
        String lead,
        List<Column> columns,
        List<List<String>> rows,
        List<Sum> sums,
        List<Pair> notes,
        Optional<byte[]> picture,
        Optional<byte[]> logo) {

    public record Pair(String name, String value) {}

    /**
     * @param share of the width, against the other columns
     * @param figures whether amounts stand in it, set to the right
     */
    public record Column(String name, float share, boolean figures) {}

    /** @param strong the amount that counts */
    public record Sum(String name, Money amount, boolean strong) {}

    /** The words on it, line by line. */
    public String says() {
        List<String> words = new ArrayList<>(List.of(title));
        words.addAll(seller);
        words.addAll(customer);
        facts.forEach(fact -> words.add(fact.name() + ": " + fact.value()));
        words.add(lead);
        rows.forEach(row -> words.add(String.join(" | ", row)));
        sums.forEach(sum -> words.add(sum.name() + ": " + sum.amount().rounded().amount() + " "
                + sum.amount().currency().getCurrencyCode()));
        notes.forEach(note -> words.add((note.name() + " " + note.value()).strip()));
        words.removeIf(String::isBlank);
        return String.join("\n", words);
    }
}
