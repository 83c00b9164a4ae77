package puzzleworkshop.delivery.labels;

/**
 * What goods are to the customs, as form CN 22 of the Universal Postal Union asks for it: gift, documents, sale of goods,
 * commercial sample, returned goods, other.
 */
public enum GoodsCategory {
    SALE_OF_GOODS,
    /** Made again for nothing after a complaint: the form has no box for it, so it is another kind, and is named. */
    REPLACEMENT,
    GIFT,
    COMMERCIAL_SAMPLE,
    RETURNED_GOODS,
    DOCUMENTS,
    OTHER;

    /** The box of the form that is ticked. */
    GoodsCategory box() {
        return this == REPLACEMENT ? OTHER : this;
    }

    public String textKey() {
        return "delivery.cn22." + name();
    }
}
