package puzzleworkshop.proofs;

import puzzleworkshop.artwork.Picture;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Tray;

/**
 * What a customer looks at when approving: the picture by its content, its crop, the pattern and the
 * tray. Two that look the same have the same text, and any change gives another.
 */
record ApprovedSnapshot(String text) {

    static ApprovedSnapshot of(Picture picture, FramedPicture framed, Puzzle puzzle) {
        PatternSpec pattern = puzzle.pattern();
        // said only where there is one, so that what was approved before trays were asked for keeps its fingerprint
        String tray = puzzle.tray() ? "\n" + Tray.of(pattern) : "";
        return new ApprovedSnapshot("picture " + picture.sha256() + "\n" + framed.crop() + "\ndesign "
                + PatternSpec.DESIGN + "\n" + pattern + tray);
    }

    /** SHA-256 of the text, 64 hexadecimal digits. */
    String fingerprint() {
        return Token.sha256(text);
    }
}
