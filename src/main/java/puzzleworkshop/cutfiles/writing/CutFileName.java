package puzzleworkshop.cutfiles.writing;

/** Names of files that every system takes. */
public final class CutFileName {

    private CutFileName() {}

    /** The words with a dash for everything but letters, digits, points, underscores and dashes, and the ending. */
    public static String of(String words, String ending) {
        return words.replaceAll("[^\\p{L}\\p{N}._-]+", "-") + "." + ending;
    }
}
