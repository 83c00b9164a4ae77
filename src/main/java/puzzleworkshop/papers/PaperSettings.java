package puzzleworkshop.papers;

/**
 * What stands on papers beside the workshop's name and address.
 *
 * @param taxNumber as the tax office gave it; may be empty
 * @param bank where to pay, lines separated by line ends; may be empty
 * @param quoteTerms under a quote; may be empty
 * @param invoiceTerms under an invoice; may be empty
 * @param dueDays from issue to the day it is to be paid
 * @param logo PNG or JPEG; empty array for none
 */
public record PaperSettings(
        String taxNumber, String bank, String quoteTerms, String invoiceTerms, int dueDays, byte[] logo) {

    public boolean hasLogo() {
        return logo.length > 0;
    }
}
