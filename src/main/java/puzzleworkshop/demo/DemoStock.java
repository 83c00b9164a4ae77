package puzzleworkshop.demo;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineCosts;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.machines.WearPart;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.workshop.Workshop;

/** What lies and stands in the demo workshop: boards and offcuts of many shapes, supplies, one laser with its settings. */
@Component
class DemoStock {

    static final String MAKER = "Mara";
    static final String FLAT_BOX = "Box, flat, 320 × 230";
    static final String SMALL_BOX = "Box, small, 220 × 155";
    static final String BAG = "Cotton bag, small";
    static final BoardKind BIRCH = new BoardKind("birch-ply", "CRAFT", Length.mm(3));
    static final BoardKind POPLAR = new BoardKind("poplar-ply", "CRAFT", Length.mm(3));
    static final BoardKind THICK_BIRCH = new BoardKind("birch-ply", "CRAFT", Length.mm(4));

    private final RackSettings settings;
    private final SheetRack rack;
    private final Supplies supplies;
    private final PastShelf shelf;
    private final Machines machines;
    private final Settings cutSettings;
    private final Workshop workshop;

    DemoStock(
            RackSettings settings,
            SheetRack rack,
            Supplies supplies,
            PastShelf shelf,
            Machines machines,
            Settings cutSettings,
            Workshop workshop) {
        this.settings = settings;
        this.rack = rack;
        this.supplies = supplies;
        this.shelf = shelf;
        this.machines = machines;
        this.cutSettings = cutSettings;
        this.workshop = workshop;
    }

    void boards() {
        offer("Birch ply 3 mm, 600 × 300", "birch-ply", Grade.CRAFT, 3, 600, 300, "5.40");
        offer("Birch ply 3 mm, 600 × 400", "birch-ply", Grade.CRAFT, 3, 600, 400, "6.90");
        offer("Poplar ply 3 mm, 600 × 400", "poplar-ply", Grade.CRAFT, 3, 600, 400, "4.10");
        offer("Birch ply 4 mm, 600 × 400", "birch-ply", Grade.CRAFT, 4, 600, 400, "8.60");

        rectangle(600, 300, "birch-ply", "L1", "5.40");
        rectangle(420, 297, "birch-ply", "L1", "3.70");
        rectangle(480, 250, "birch-ply", "L1", "3.60");
        rectangle(345, 245, "birch-ply", "L3", "2.40");
        rectangle(610, 380, "birch-ply", "L3", "6.30");
        rectangle(380, 240, "birch-ply", "L2", "2.70");
        rectangle(250, 180, "birch-ply", "L2", "1.30");
        rectangle(600, 400, "poplar-ply", "R1", "4.10");
        rectangle(350, 260, "poplar-ply", "R1", "1.50");
        shape(birch("R2"), "3.10", 0, 0, 460, 0, 460, 150, 230, 150, 230, 330, 0, 330);
        shape(birch("R2"), "2.60", 0, 0, 520, 0, 520, 240, 340, 240, 340, 130, 180, 130, 180, 240, 0, 240);
        shape(birch("W1"), "2.20", 0, 0, 400, 0, 0, 300);
        shape(birch("W1"), "2.90", 20, 0, 430, 30, 400, 260, 250, 300, 0, 240);
        badSpot(birch("W2"), "3.30");
        rack.add(
                rectangle(500, 320),
                new BoardFacts(
                        "birch-ply",
                        Grade.CRAFT,
                        Length.mm(3),
                        Optional.of(Length.mm(2.9)),
                        Length.mm(2.4),
                        BoardContamination.CLEAN,
                        Grain.ALONG_WIDTH,
                        "W2",
                        "Lay it flat under a weight for a week."),
                money("4.00"),
                MAKER);
        rack.add(
                rectangle(450, 300),
                new BoardFacts(
                        "softwood-ply",
                        Grade.CONSTRUCTION,
                        Length.mm(3),
                        Optional.empty(),
                        Length.mm(0.5),
                        BoardContamination.WET_GLUE,
                        Grain.NONE,
                        "F1",
                        "From the old shelf; glued on."),
                money("0"),
                MAKER);
    }

    void supplies() {
        supply(
                "Sticker paper A4, matt",
                SupplyKind.STICKER_PAPER,
                UseUnit.SHEET,
                210,
                297,
                "pack of 50 sheets",
                50,
                LaserFacts.Adhesive.DRY,
                "14.50",
                3);
        supply(
                "Sticker paper A3, matt",
                SupplyKind.STICKER_PAPER,
                UseUnit.SHEET,
                297,
                420,
                "pack of 25 sheets",
                25,
                LaserFacts.Adhesive.DRY,
                "16.00",
                2);
        supply(
                "Laminate film, PET, 330 mm",
                SupplyKind.LAMINATE,
                UseUnit.METRE,
                330,
                0,
                "roll of 30 m",
                30,
                LaserFacts.Adhesive.DRY,
                "27.00",
                1);
        supply(
                "Masking tape, pale, 200 mm",
                SupplyKind.MASKING_TAPE,
                UseUnit.METRE,
                200,
                0,
                "roll of 50 m",
                50,
                LaserFacts.Adhesive.DRY,
                "11.00",
                1);
        supply(FLAT_BOX, SupplyKind.BOX, UseUnit.PIECE, 0, 0, "bundle of 20", 20, LaserFacts.Adhesive.NONE, "23.00", 2);
        supply(
                SMALL_BOX,
                SupplyKind.BOX,
                UseUnit.PIECE,
                0,
                0,
                "bundle of 20",
                20,
                LaserFacts.Adhesive.NONE,
                "17.00",
                1);
        supply(BAG, SupplyKind.BAG, UseUnit.PIECE, 0, 0, "bundle of 50", 50, LaserFacts.Adhesive.NONE, "12.50", 1);
        supply(
                "Address labels",
                SupplyKind.LABEL,
                UseUnit.PIECE,
                0,
                0,
                "sheet of 24",
                24,
                LaserFacts.Adhesive.NONE,
                "1.10",
                4);
        supply(
                "Lens for the laser",
                SupplyKind.LENS,
                UseUnit.PIECE,
                0,
                0,
                "single",
                1,
                LaserFacts.Adhesive.NONE,
                "19.00",
                1);
    }

    /** The laser with which the year began: smaller and slower, and replaced since. */
    long formerMachine() {
        return machines.save(Machine.usual("The small grey laser", workshop.currency()))
                .id();
    }

    /** @param former the one that it replaced */
    void machine(long former) {
        Currency currency = workshop.currency();
        Machine usual = Machine.usual("The blue laser", currency);
        MachineCosts costs = new MachineCosts(
                money("980"),
                money("120"),
                2500,
                0.19,
                money("55"),
                500,
                List.of(new WearPart("Lens", money("19"), 300)));
        Machine machine = machines.save(new Machine(
                0,
                usual.name(),
                Size.mm(620, 420),
                usual.beam(),
                usual.motion(),
                usual.bowLimit(),
                usual.setUp(),
                usual.passPause(),
                costs,
                true,
                false));
        machines.makeStandard(machine.id());
        machines.retire(former);
        trial(machine, BIRCH, 360, 1, Trial.Result.NOT_THROUGH, 0, "One pass does not reach through.");
        trial(machine, BIRCH, 300, 1, Trial.Result.PARTLY, 1, "Through in the middle, not at the edges.");
        for (int i = 0; i < 4; i++) {
            trial(machine, BIRCH, 330, 2, Trial.Result.THROUGH, 1, "Clean.");
        }
        trial(machine, POPLAR, 360, 1, Trial.Result.PARTLY, 1, "Nearly.");
        trial(machine, POPLAR, 300, 1, Trial.Result.THROUGH, 2, "Through, brown edge.");
    }

    private void trial(
            Machine machine,
            BoardKind board,
            double mmPerMinute,
            int passes,
            Trial.Result result,
            int charring,
            String note) {
        CutParameters parameters = new CutParameters(
                Speed.mmPerMinute(mmPerMinute),
                Percent.of(100),
                passes,
                true,
                machine.beam().lensGap());
        cutSettings.record(
                BookingKey.fresh(),
                machine,
                board,
                parameters,
                new Trial.Finding(result, charring, Optional.of(machine.beam().lensGap()), note),
                Trial.Source.TRY,
                MAKER,
                Optional.empty());
    }

    private void offer(
            String name, String material, Grade grade, double thickness, double width, double height, String price) {
        settings.save(new BoardOffer(
                0,
                name,
                material,
                grade,
                Length.mm(thickness),
                Size.mm(width, height),
                Grain.NONE,
                money(price),
                true));
    }

    private void rectangle(double width, double height, String material, String place, String cost) {
        rack.add(
                rectangle(width, height),
                BoardFacts.clean(material, Grade.CRAFT, Length.mm(3)).at(place),
                money(cost),
                MAKER);
    }

    private static Outline rectangle(double width, double height) {
        return Outline.rectangle(Size.mm(width, height));
    }

    private static BoardFacts birch(String place) {
        return BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)).at(place);
    }

    private void shape(BoardFacts facts, String cost, double... corners) {
        rack.add(Outline.of(ring(corners)), facts, money(cost), MAKER);
    }

    private void badSpot(BoardFacts facts, String cost) {
        List<Point> outer = ring(0, 0, 480, 0, 480, 310, 0, 310);
        List<Point> knot = ring(350, 60, 385, 55, 395, 90, 360, 100);
        rack.add(Outline.of(outer, List.of(knot)), facts, money(cost), MAKER);
    }

    private static List<Point> ring(double... corners) {
        return java.util.stream.IntStream.range(0, corners.length / 2)
                .mapToObj(i -> new Point(corners[2 * i], corners[2 * i + 1]))
                .toList();
    }

    private void supply(
            String name,
            SupplyKind kind,
            UseUnit unit,
            double width,
            double height,
            String purchase,
            int perPurchase,
            LaserFacts.Adhesive adhesive,
            String price,
            int bought) {
        SupplyItem item = supplies.keep(new SupplyItem(
                Optional.empty(),
                name,
                kind,
                unit,
                length(width),
                length(height),
                purchase,
                BigDecimal.valueOf(perPurchase),
                new LaserFacts(LaserFacts.Pvc.FREE, adhesive),
                4,
                3,
                !name.contains("L3"),
                false,
                BigDecimal.ZERO,
                Money.zero(workshop.currency())));
        shelf.fill(item, money(price), bought);
    }

    private static Optional<Length> length(double mm) {
        return mm > 0 ? Optional.of(Length.mm(mm)) : Optional.empty();
    }

    private Money money(String amount) {
        return Money.of(new BigDecimal(amount), workshop.currency()).rounded();
    }
}
