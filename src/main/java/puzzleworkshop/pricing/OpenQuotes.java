package puzzleworkshop.pricing;

import java.util.List;

/** Quotes that customers have not answered yet, as a higher room keeps them; asked when a rate is about to change. */
public interface OpenQuotes {

    /** A quote by the number people know it by, with the price it was worked out with. */
    record OpenQuote(String number, KeptPrice price) {}

    List<OpenQuote> open();
}
