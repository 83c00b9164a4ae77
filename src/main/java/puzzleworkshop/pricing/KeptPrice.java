package puzzleworkshop.pricing;

import puzzleworkshop.pricing.cost.PriceQuestion;

/**
 * A price as it was worked out on a day: what was asked and what was answered. Kept with an order, so that it keeps its
 * costs when rates change.
 */
public record KeptPrice(PriceQuestion question, PriceAnswer answer) {

    /** As JSON text for a jsonb column. */
    public String toJson() {
        return PriceJson.write(this);
    }

    public static KeptPrice fromJson(String json) {
        return PriceJson.read(json);
    }
}
