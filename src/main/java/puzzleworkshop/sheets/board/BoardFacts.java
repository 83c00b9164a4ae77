package puzzleworkshop.sheets.board;

import java.util.Optional;
import puzzleworkshop.measure.Length;

/**
 * What is true of a board besides its shape.
 *
 * @param material id of a {@link Material}
 * @param nominal thickness it was sold as
 * @param measured thickness with a calliper, where someone did
 * @param bow how far it lifts off a flat table, over the whole board
 * @param place on the rack, as the workshop names it; may be empty
 * @param note anything else; may be empty
 */
public record BoardFacts(
        String material,
        Grade grade,
        Length nominal,
        Optional<Length> measured,
        Length bow,
        BoardContamination past,
        Grain grain,
        String place,
        String note) {

    public static BoardFacts clean(String material, Grade grade, Length nominal) {
        return new BoardFacts(
                material, grade, nominal, Optional.empty(), Length.ZERO, BoardContamination.CLEAN, Grain.NONE, "", "");
    }

    /** The measured thickness, else the nominal one. */
    public Length thickness() {
        return measured.orElse(nominal);
    }

    public BoardFacts at(String newPlace) {
        return new BoardFacts(material, grade, nominal, measured, bow, past, grain, newPlace, note);
    }

    public BoardFacts noted(String newNote) {
        return new BoardFacts(material, grade, nominal, measured, bow, past, grain, place, newNote);
    }
}
