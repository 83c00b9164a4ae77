package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/** The money of one order by hand: quote, deposit, invoice, part payment, credit note, and what the accountant gets. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class MoneyWalk extends Walk {

    private static final Pattern AMOUNT = Pattern.compile("(\\d[\\d,]*\\.\\d\\d)");

    private String number;
    private BigDecimal price;

    @Test
    @Order(1)
    void prices_hold_the_tax_from_today_on() {
        openWorkshop(true);
        go("rates");
        choose("No VAT", "VAT included in prices");
        button("Save rule").click();
        page.getByText("Saved. Orders that stand keep their costs.").waitFor();
    }

    @Test
    @Order(2)
    void a_quote_with_two_tax_rates_is_kept_and_set_on_paper() throws IOException {
        go("orders/new");
        page.locator("#customer input").fill("Quay Street School");
        page.keyboard().press("Enter");
        type("How many puzzles", "2");
        type("Delivery charged, net", "6");
        choose("VAT on puzzles", "Reduced rate");
        page.getByText("VAT 10 % on").waitFor();
        page.getByText("VAT 20 % on £6.00").waitFor();
        settle();
        price = amount(page.locator("#price").textContent());
        page.locator("#save-quote").click();
        page.waitForURL("**/orders/2*");
        settle();
        number = page.url().replaceAll(".*/", "");
        String quote = pdf("Quote as PDF", "quote");
        assertThat(quote).contains("Quote " + number, "Quay Street School", "VAT 10 %", "VAT 20 %");
        assertThat(quote.replace(",", "")).contains(price.toPlainString());
    }

    @Test
    @Order(3)
    void a_deposit_is_taken_and_the_invoice_says_what_is_still_to_pay() throws IOException {
        button("Confirm").first().click();
        page.getByText("Confirmed for").first().waitFor();
        settle();
        receive("25.00");
        page.getByText("Deposit").waitFor();
        button("Issue invoice…").click();
        settle();
        page.getByText("The order is only at").waitFor();
        shoot("issue");
        button("Issue all the same").click();
        page.locator("a")
                .filter(new Locator.FilterOptions().setHasText("Invoice 2"))
                .waitFor();
        settle();
        String invoice = pdf("Invoice 2", "invoice");
        assertThat(invoice).contains("Received, thank you", "Still to pay");
        assertThat(invoice.replace(",", ""))
                .contains(price.subtract(new BigDecimal("25.00")).toPlainString());
        assertThat(open()).isEqualByComparingTo(price.subtract(new BigDecimal("25.00")));
    }

    @Test
    @Order(4)
    void a_part_payment_and_a_credit_note_at_one_rate_leave_the_rest_open() throws IOException {
        receive("10.00");
        button("Credit note").first().click();
        settle();
        Locator reduced = page.getByLabel("Amount at 10 % VAT");
        reduced.fill("0");
        page.getByLabel("Amount at 20 % VAT").fill("7.21");
        page.getByLabel("Why the invoice is corrected").fill("collected after all");
        dialog().click();
        page.getByText("Not more than £7.20 can be credited at 20 %").waitFor();
        page.getByLabel("Amount at 20 % VAT").fill("7.20");
        assertThat(page.getByLabel("Why the invoice is corrected").inputValue()).isEqualTo("collected after all");
        dialog().click();
        page.locator("a")
                .filter(new Locator.FilterOptions().setHasText("Credit note C"))
                .waitFor();
        settle();
        String note = pdf("Credit note C", "credit-note");
        // 7.20 with tax at 20 % is 6.00 and 1.20, whatever rate the puzzles carry.
        assertThat(note)
                .contains("collected after all", "VAT 20 % on £6.00", "£1.20")
                .doesNotContain("VAT 10 %");
        assertThat(open()).isEqualByComparingTo(price.subtract(new BigDecimal("42.20")));
        shoot("money");
    }

    @Test
    @Order(5)
    void the_accountants_lines_add_up_to_the_papers_rate_by_rate() throws IOException {
        go("figures");
        page.getByText("Quay Street School").first().waitFor();
        List<CSVRecord> lines = csv("Invoices and credit notes").stream()
                .filter(line -> line.get("order").equals(number))
                .toList();
        assertThat(sum(lines, "gross")).isEqualByComparingTo(price.subtract(new BigDecimal("7.20")));
        assertThat(sum(lines, "net").add(sum(lines, "vat"))).isEqualByComparingTo(sum(lines, "gross"));
        List<CSVRecord> standard = lines.stream()
                .filter(line -> line.get("vat_percent").equals("20"))
                .toList();
        assertThat(standard).hasSize(2);
        assertThat(sum(standard, "gross")).isEqualByComparingTo("0");
        assertThat(sum(standard, "vat")).isEqualByComparingTo("0");
        List<CSVRecord> paid = csv("Payments").stream()
                .filter(line -> line.get("order").equals(number))
                .toList();
        assertThat(sum(paid, "amount")).isEqualByComparingTo("35.00");
        shoot("figures");
        assertThat(complaints()).isEmpty();
    }

    private void receive(String amount) {
        button("Money received").first().click();
        settle();
        page.getByLabel("Amount", new Page.GetByLabelOptions().setExact(true)).fill(amount);
        dialog().click();
        page.getByText("£" + amount).first().waitFor();
        settle();
    }

    private Locator dialog() {
        return page.locator("vaadin-dialog vaadin-button[theme~=primary]").first();
    }

    private BigDecimal open() {
        return amount(page.locator(".papers-sum").last().textContent());
    }

    private void type(String label, String value) {
        Locator field = page.getByLabel(label);
        field.fill(value);
        field.press("Tab");
        settle();
    }

    private void choose(String shown, String option) {
        page.locator("vaadin-select")
                .filter(new Locator.FilterOptions().setHasText(shown))
                .first()
                .click();
        settle();
        page.locator("vaadin-select-item")
                .filter(new Locator.FilterOptions().setHasText(option))
                .first()
                .click();
        settle();
    }

    private byte[] file(String link) {
        String address = (String) page.locator("a")
                .filter(new Locator.FilterOptions().setHasText(link))
                .first()
                .evaluate("a => a.href");
        APIResponse answer = page.request().get(address);
        assertThat(answer.status()).as(link).isEqualTo(200);
        return answer.body();
    }

    /** The text of a paper; the paper itself stays in target/papers for a look. */
    private String pdf(String link, String name) throws IOException {
        byte[] file = file(link);
        Path folder = Path.of("target", "papers");
        Files.createDirectories(folder);
        Files.write(folder.resolve("walk-" + name + ".pdf"), file);
        try (PDDocument document = Loader.loadPDF(file)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private List<CSVRecord> csv(String link) throws IOException {
        String text = new String(file(link), java.nio.charset.StandardCharsets.UTF_8);
        return CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(text))
                .getRecords();
    }

    private static BigDecimal sum(List<CSVRecord> lines, String column) {
        return lines.stream().map(line -> new BigDecimal(line.get(column))).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static BigDecimal amount(String text) {
        Matcher found = AMOUNT.matcher(text);
        assertThat(found.find()).as("an amount in '%s'", text).isTrue();
        return new BigDecimal(found.group(1).replace(",", ""));
    }
}
