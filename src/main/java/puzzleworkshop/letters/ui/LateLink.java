package puzzleworkshop.letters.ui;

/**
 * Puts a customer's link, made after the letter was written, into words that a person has changed meanwhile: nothing of
 * theirs is touched. It goes where the proposed letter has it, found by the line it stands on or the lines around it; at
 * the end where none of them is left.
 */
final class LateLink {

    private LateLink() {}

    /**
     * @param edited the letter as it stands
     * @param proposed the same letter in the house's words, with the link
     */
    static String into(String edited, String proposed, String link) {
        if (edited.contains(link)) {
            return edited;
        }
        String[] lines = proposed.split("\n", -1);
        for (int i = 0; i < lines.length; i++) {
            int at = lines[i].indexOf(link);
            if (at >= 0) {
                String before = lines[i].substring(0, at).strip();
                if (!before.isEmpty()) {
                    return after(edited, before, " " + link);
                }
                return between(edited, above(lines, i), below(lines, i), link);
            }
        }
        return after(edited, "", "\n\n" + link);
    }

    private static String between(String edited, String above, String below, String link) {
        if (!above.isEmpty() && edited.contains(above)) {
            return after(edited, above, "\n\n" + link);
        }
        int at = below.isEmpty() ? -1 : edited.indexOf(below);
        return at < 0
                ? after(edited, "", "\n\n" + link)
                : edited.substring(0, at) + link + "\n\n" + edited.substring(at);
    }

    /** Behind the words, or at the end when they are not there. */
    private static String after(String edited, String words, String what) {
        int at = words.isEmpty() ? -1 : edited.indexOf(words);
        if (at < 0) {
            return edited.stripTrailing() + "\n\n" + what.strip();
        }
        int end = at + words.length();
        return edited.substring(0, end) + what + edited.substring(end);
    }

    private static String above(String[] lines, int from) {
        int i = from - 1;
        while (i >= 0 && lines[i].isBlank()) {
            i--;
        }
        return i < 0 ? "" : lines[i].strip();
    }

    private static String below(String[] lines, int from) {
        int i = from + 1;
        while (i < lines.length && lines[i].isBlank()) {
            i++;
        }
        return i >= lines.length ? "" : lines[i].strip();
    }
}
