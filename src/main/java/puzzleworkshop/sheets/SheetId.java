package puzzleworkshop.sheets;

/** A sheet's number, as written on its label. */
public record SheetId(long value) {

    @Override
    public String toString() {
        return Long.toString(value);
    }
}
