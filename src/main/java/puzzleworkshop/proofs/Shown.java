package puzzleworkshop.proofs;

import puzzleworkshop.artwork.Picture;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pattern.PatternSpec;

/**
 * What a customer looks at when approving: the picture by its content, its crop, and the pattern. Two that look the same
 * have the same text, and any change gives another.
 */
record Shown(String text) {

    static Shown of(Picture picture, FramedPicture framed, PatternSpec pattern) {
        return new Shown("picture " + picture.sha256() + "\n" + framed.crop() + "\ndesign " + PatternSpec.DESIGN + "\n" + pattern);
    }

    /** SHA-256 of the text, 64 hexadecimal digits. */
    String fingerprint() {
        return Token.sha256(text);
    }
}
