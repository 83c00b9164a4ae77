package puzzleworkshop.boards;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Service;
import puzzleworkshop.boards.BlankPlan.Part;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.find.BlankSearch;
import puzzleworkshop.sheets.find.NewSheet;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.find.Suggestion;
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
     * @param stillWanted run before each block; ends the search by throwing
     */
    public BlankPlan plan(
            TradeNumbers numbers,
            Size finished,
            int quantity,
            BoardKind board,
            Optional<SheetId> chosen,
            Length mostBow,
            Size bed,
            Runnable stillWanted) {
        Sizing sizing = (across, down) -> BlankPlan.blockSize(numbers, finished, across, down);
        return filled(List.of(), 0, Part.PUZZLE, sizing, quantity, board, chosen, mostBow, bed, stillWanted);
    }

    /** The same with a frame and a backing for each puzzle, on boards of the same kind. */
    public BlankPlan withTrays(
            BlankPlan puzzles,
            TradeNumbers numbers,
            Size outer,
            int quantity,
            BoardKind board,
            Length mostBow,
            Size bed,
            Runnable stillWanted) {
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
                bed,
                stillWanted);
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
            Size bed,
            Runnable stillWanted) {
        Filling filling = new Filling(part, sizing, board, mostBow, bed);
        before.forEach(block -> block.sheet()
                .ifPresent(suggestion -> filling.search.take(suggestion.sheet().id())));
        int left = quantity;
        if (before.isEmpty() && chosen.isPresent() && left > 0) {
            left -= filling.on(chosen.get(), left);
        }
        while (left > 0) {
            stillWanted.run();
            int placed = filling.next(left);
            if (placed == 0) {
                break;
            }
            left -= placed;
        }
        List<BlankPlan.Block> blocks = new ArrayList<>(before);
        blocks.addAll(filling.blocks());
        return new BlankPlan(blocks, missingBefore + left);
    }

    /** Block after block for one kind of part. */
    private final class Filling {

        private final Part part;
        private final Sizing sizing;
        private final BoardKind board;
        private final Length mostBow;
        private final Size bed;
        private final BlankSearch search;
        private final Map<Size, Optional<NewSheet>> offers = new HashMap<>();
        private final List<Placed> placed = new ArrayList<>();

        Filling(Part part, Sizing sizing, BoardKind board, Length mostBow, Size bed) {
            this.part = part;
            this.sizing = sizing;
            this.board = board;
            this.mostBow = mostBow;
            this.bed = bed;
            this.search = finder.search(wish(sizing.of(1, 1), board, mostBow));
        }

        /** A block whose sheet is known, found in the rack (its place to be made fine yet), or to be bought. */
        private record Placed(
                int[] grid,
                Size size,
                Optional<Suggestion> known,
                Optional<BlankSearch.Found> found,
                Optional<NewSheet> offer) {}

        /** The largest block on the sheet that the seller wants; how many it holds, 0 when it gives none. */
        int on(SheetId wanted, int left) {
            for (int[] grid : grids(left)) {
                Size size = sizing.of(grid[0], grid[1]);
                Optional<Suggestion> known =
                        size.fitsUpright(bed) ? finder.on(wanted, wish(size, board, mostBow)) : Optional.empty();
                if (known.isPresent()) {
                    search.take(wanted);
                    placed.add(new Placed(grid, size, known, Optional.empty(), Optional.empty()));
                    return grid[0] * grid[1];
                }
            }
            return 0;
        }

        /** The largest block that any sheet gives, else the largest on a board to buy; how many it holds. */
        int next(int left) {
            Optional<Placed> toBuy = Optional.empty();
            for (int[] grid : grids(left)) {
                Size size = sizing.of(grid[0], grid[1]);
                if (!size.fitsUpright(bed)) {
                    continue;
                }
                Optional<BlankSearch.Found> found = search.take(size);
                if (found.isPresent()) {
                    placed.add(new Placed(grid, size, Optional.empty(), found, Optional.empty()));
                    return grid[0] * grid[1];
                }
                if (toBuy.isEmpty()) {
                    toBuy = offers.computeIfAbsent(size, s -> finder.newSheetFor(wish(s, board, mostBow)))
                            .map(offer ->
                                    new Placed(grid, size, Optional.empty(), Optional.empty(), Optional.of(offer)));
                }
            }
            toBuy.ifPresent(placed::add);
            return toBuy.map(block -> block.grid()[0] * block.grid()[1]).orElse(0);
        }

        List<BlankPlan.Block> blocks() {
            List<Suggestion> fine = finder.suggestions(
                    search,
                    placed.stream().flatMap(block -> block.found().stream()).toList());
            Iterator<Suggestion> next = fine.iterator();
            return placed.stream()
                    .map(block -> new BlankPlan.Block(
                            part,
                            block.grid()[0],
                            block.grid()[1],
                            block.size(),
                            block.found().isPresent() ? Optional.of(next.next()) : block.known(),
                            block.offer()))
                    .toList();
        }
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
