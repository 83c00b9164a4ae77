package puzzleworkshop.boards;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Service;
import puzzleworkshop.boards.BlankPlan.Part;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.BlankWish;
import puzzleworkshop.sheets.Grade;
import puzzleworkshop.sheets.NewSheet;
import puzzleworkshop.sheets.SheetFinder;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.Suggestion;
import puzzleworkshop.workshop.TradeNumbers;

/**
 * Finds boards for all puzzles of an order: the largest blocks that sheets of the rack give, and new boards for the rest.
 * A block saves set-ups at the bench and at the laser, so it is preferred to single blanks (common practice).
 */
@Service
public class BlankPlanner {

    /** Blocks larger than this are unhandy on the laser's bed and are not looked for. */
    private static final int MOST_SIDE_BY_SIDE = 8;

    private final SheetFinder finder;

    BlankPlanner(SheetFinder finder) {
        this.finder = finder;
    }

    /**
     * @param chosen the sheet the seller wants for the first block; ignored when it cannot be
     * @param mostBow the machine's limit, held down
     * @param bed the machine's; no block is larger
     */
    public BlankPlan plan(
            TradeNumbers numbers,
            Size finished,
            int quantity,
            BoardKind board,
            Optional<SheetId> chosen,
            Length mostBow,
            Size bed) {
        Sizing sizing = (across, down) -> BlankPlan.blockSize(numbers, finished, across, down);
        return filled(List.of(), 0, Part.PUZZLE, sizing, quantity, board, chosen, mostBow, bed);
    }

    /** The same with a frame and a backing for each puzzle, on boards of the same kind. */
    public BlankPlan withTrays(
            BlankPlan puzzles,
            TradeNumbers numbers,
            Size outer,
            int quantity,
            BoardKind board,
            Length mostBow,
            Size bed) {
        Sizing sizing = (across, down) -> BlankPlan.trayBlockSize(numbers, outer, across, down);
        return filled(
                puzzles.blocks(),
                puzzles.missing(),
                Part.TRAY,
                sizing,
                2 * quantity,
                board,
                Optional.empty(),
                mostBow,
                bed);
    }

    /** How large a block of so many by so many is. */
    private interface Sizing {
        Size of(int across, int down);
    }

    private BlankPlan filled(
            List<BlankPlan.Block> before,
            int missingBefore,
            Part part,
            Sizing sizing,
            int quantity,
            BoardKind board,
            Optional<SheetId> chosen,
            Length mostBow,
            Size bed) {
        List<BlankPlan.Block> blocks = new ArrayList<>(before);
        Set<SheetId> taken = new HashSet<>();
        before.forEach(block -> block.sheet()
                .ifPresent(suggestion -> taken.add(suggestion.sheet().id())));
        int left = quantity;
        while (left > 0) {
            Optional<SheetId> wanted = blocks.isEmpty() ? chosen : Optional.empty();
            Optional<BlankPlan.Block> next = next(part, sizing, left, board, wanted, taken, mostBow, bed);
            if (next.isEmpty()) {
                break;
            }
            next.get()
                    .sheet()
                    .ifPresent(suggestion -> taken.add(suggestion.sheet().id()));
            blocks.add(next.get());
            left -= next.get().count();
        }
        return new BlankPlan(blocks, missingBefore + left);
    }

    /** The sheets that would do for one puzzle, best first. */
    public List<Suggestion> choices(TradeNumbers numbers, Size finished, BoardKind board, Length mostBow) {
        return finder.suggest(wish(numbers.blankFor(finished), board, mostBow));
    }

    /** What to look for in the rack for one puzzle. */
    public static BlankWish wish(Size blank, BoardKind board, Length mostBow) {
        BlankWish any = BlankWish.of(blank, board.thickness());
        return new BlankWish(
                any.size(),
                Set.of(board.material()),
                Set.of(Grade.valueOf(board.grade())),
                any.thickness(),
                mostBow,
                BlankWish.GrainWish.ANY);
    }

    private Optional<BlankPlan.Block> next(
            Part part,
            Sizing sizing,
            int left,
            BoardKind board,
            Optional<SheetId> wanted,
            Set<SheetId> taken,
            Length mostBow,
            Size bed) {
        Optional<BlankPlan.Block> toBuy = Optional.empty();
        for (int[] grid : grids(left)) {
            Size size = sizing.of(grid[0], grid[1]);
            if (!size.fitsUpright(bed)) {
                continue;
            }
            BlankWish wish = wish(size, board, mostBow);
            Optional<Suggestion> found = wanted.filter(id -> !taken.contains(id))
                    .flatMap(id -> finder.on(id, wish))
                    .or(() -> finder.suggest(wish, taken.size() + 1).stream()
                            .filter(suggestion ->
                                    !taken.contains(suggestion.sheet().id()))
                            .findFirst());
            if (found.isPresent()) {
                return Optional.of(new BlankPlan.Block(part, grid[0], grid[1], size, found, Optional.empty()));
            }
            if (toBuy.isEmpty()) {
                Optional<NewSheet> offer = finder.newSheetFor(wish);
                toBuy = offer.map(
                        o -> new BlankPlan.Block(part, grid[0], grid[1], size, Optional.empty(), Optional.of(o)));
            }
        }
        return toBuy;
    }

    /** Grids of at most so many puzzles, most puzzles first, squarer ones first among equals. */
    private static List<int[]> grids(int left) {
        List<int[]> grids = new ArrayList<>();
        for (int across = 1; across <= Math.min(left, MOST_SIDE_BY_SIDE); across++) {
            for (int down = 1; down <= Math.min(left / across, MOST_SIDE_BY_SIDE); down++) {
                grids.add(new int[] {across, down});
            }
        }
        grids.sort(Comparator.comparingInt((int[] g) -> -g[0] * g[1]).thenComparingInt(g -> Math.abs(g[0] - g[1])));
        return grids;
    }
}
