package puzzleworkshop.measure;

/**
 * Holds money that not everybody in the workshop sees, beside what everybody may see. What holds only money of the first
 * kind need not implement it: amounts are taken out by themselves.
 *
 * @param <T> itself
 */
public interface Confidential<T> {

    /** The same without what only an owner sees. */
    T withoutMoney();
}
