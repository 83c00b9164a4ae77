package puzzleworkshop.camera.outline;

import java.util.List;
import puzzleworkshop.camera.sheet.SeenSheet;
import puzzleworkshop.measure.Sentence;

/**
 * What a photo shows.
 *
 * @param boards largest first
 * @param leftOut why something that looks like a board is not among them
 * @param sheet what was measured on, and from where
 */
public record FoundBoards(List<FoundBoard> boards, List<Sentence> leftOut, SeenSheet sheet) {

    public FoundBoards {
        boards = List.copyOf(boards);
        leftOut = List.copyOf(leftOut);
    }
}
