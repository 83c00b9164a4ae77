package puzzleworkshop.sheets.list;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Service;
import puzzleworkshop.camera.outline.FoundBoard;
import puzzleworkshop.camera.outline.FoundBoards;
import puzzleworkshop.camera.pieces.OutlineMatch;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;

/** Which sheets of the rack lie in a photo, told by their outlines. */
@Service
public class RackByPhoto {

    /** A page of sheets at a time, so that no rack is too large. */
    private static final int PORTION = 2000;

    private final SheetRack rack;
    private final MeasuredOutlines measured;

    RackByPhoto(SheetRack rack, MeasuredOutlines measured) {
        this.rack = rack;
        this.measured = measured;
    }

    /**
     * What a board in the photo is.
     *
     * @param board index among the boards found
     * @param sheets that it may be: none when it is new, several when they are too alike
     */
    public record Recognised(int board, List<SheetId> sheets) {

        public Recognised {
            sheets = List.copyOf(sheets);
        }

        public boolean isSure() {
            return sheets.size() == 1;
        }
    }

    /** For each board found; takes a moment in a large rack, so screens ask off their thread. */
    public List<Recognised> in(FoundBoards found) {
        // a sheet from a photo carries its outline smaller than it is until a ruler agrees
        Map<SheetId, Outline> unconfirmed = measured.unconfirmedOutlines();
        List<OutlineMatch.Known> known = new ArrayList<>();
        List<Sheet> portion;
        int from = 0;
        do {
            portion = rack.list(RackFilter.inRack(), from, PORTION);
            for (Sheet sheet : portion) {
                Outline outline = unconfirmed.getOrDefault(sheet.id(), sheet.outline());
                known.add(new OutlineMatch.Known(sheet.id().value(), ring(outline.outer())));
            }
            from += portion.size();
        } while (portion.size() == PORTION);
        List<double[]> rings = found.boards().stream()
                .map(FoundBoard::outer)
                .map(RackByPhoto::ring)
                .toList();
        List<OutlineMatch.Match> matches = OutlineMatch.of(rings, known);
        List<Recognised> recognised = new ArrayList<>();
        for (int i = 0; i < matches.size(); i++) {
            recognised.add(new Recognised(
                    i, matches.get(i).numbers().stream().map(SheetId::new).toList()));
        }
        return recognised;
    }

    private static double[] ring(List<Point> outer) {
        double[] ring = new double[2 * outer.size()];
        for (int i = 0; i < outer.size(); i++) {
            ring[2 * i] = outer.get(i).xMm();
            ring[2 * i + 1] = outer.get(i).yMm();
        }
        return ring;
    }
}
