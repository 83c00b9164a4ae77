package puzzleworkshop.pricing.cost;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.rates.MachineHour;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.rates.RateSet;
import puzzleworkshop.pricing.rates.Source;
import puzzleworkshop.workshop.Stage;

/**
 * Builds what an order costs to make, before fees: materials enter at their stage, hands by minutes, the laser by its
 * hour, rejects stage by stage over what was spent until then, overhead last.
 */
public final class CostBuilder {

    /** An overhang worked back from an area is exact to far less than this. */
    private static final double ROUNDING_MM = 1e-6;

    private final PriceQuestion question;
    private final RateSet rates;
    private final MaterialPrices materials;
    private final Map<Stage, Money> spent = new EnumMap<>(Stage.class);
    private final List<CostLine> lines = new ArrayList<>();

    private CostBuilder(PriceQuestion question, RateSet rates, MaterialPrices materials) {
        this.question = question;
        this.rates = rates;
        this.materials = materials;
    }

    public static CostSheet build(PriceQuestion question, RateSet rates, MaterialPrices materials) {
        CostBuilder builder = new CostBuilder(question, rates, materials);
        builder.board();
        builder.print();
        builder.consumables();
        builder.machine();
        builder.hands();
        builder.rejects();
        builder.overhead();
        return new CostSheet(rates.currency(), question.quantity(), builder.lines);
    }

    private void board() {
        Source source = Source.of(rates.day(), "pricing.source.board");
        spend(
                Stage.SHEET_PREP,
                CostLine.of(
                        CostPart.BOARD,
                        Sentence.of("pricing.line.board"),
                        BigDecimal.valueOf(question.quantity()),
                        CostUnit.PIECE,
                        question.boardCost(),
                        source));
    }

    private void print() {
        double printed = question.stickerArea().toSquareMetres() * question.quantity();
        material(
                Stage.PRINT,
                CostPart.PRINT,
                RateKind.STICKER_M2,
                "pricing.line.sticker",
                bought(RateKind.STICKER_M2, printed),
                CostUnit.SQUARE_METRE);
        double ink = printed
                * rates.number(RateKind.INK_ML_M2).doubleValue()
                * rates.percent(RateKind.INK_COVERAGE).asDouble();
        material(Stage.PRINT, CostPart.PRINT, RateKind.INK_ML, "pricing.line.ink", ink, CostUnit.MILLILITRE);
        material(
                Stage.LAMINATE,
                CostPart.PRINT,
                RateKind.LAMINATE_M2,
                "pricing.line.laminate",
                bought(RateKind.LAMINATE_M2, printed),
                CostUnit.SQUARE_METRE);
    }

    /**
     * Square metres that are used up for what is printed: the usual waste is added, but never more than the whole sheets
     * that the stickers need, since a full sheet has no share left over.
     */
    private double bought(RateKind kind, double printed) {
        double withWaste = printed / (1 - rates.percent(RateKind.SHEET_WASTE).asDouble());
        Optional<Size> sheet = materials.of(kind, rates.day()).flatMap(MaterialPrices.Known::sheet);
        int onOne = sheet.map(this::stickersOn).orElse(0);
        if (onOne == 0) {
            return withWaste;
        }
        double whole =
                Math.ceilDiv(question.quantity(), onOne) * sheet.get().area().toSquareMetres();
        return Math.clamp(withWaste, printed, Math.max(printed, whole));
    }

    /** How many stickers of one order lie on a sheet, all upright or all lying. */
    private int stickersOn(Size sheet) {
        double width = question.finished().width().mm();
        double height = question.finished().height().mm();
        // (width + 2 o) (height + 2 o) is the sticker's area; o is the overhang of one side
        double half = (width + height) / 2;
        double overhang = (Math.sqrt(half * half + question.stickerArea().mm2() - width * height) - half) / 2;
        double w = width + 2 * overhang - ROUNDING_MM;
        double h = height + 2 * overhang - ROUNDING_MM;
        double sw = sheet.width().mm();
        double sh = sheet.height().mm();
        return (int) Math.max(Math.floor(sw / w) * Math.floor(sh / h), Math.floor(sw / h) * Math.floor(sh / w));
    }

    private void consumables() {
        double masked = question.stickerArea().toSquareMetres() * question.quantity();
        CostPart part = CostPart.CONSUMABLES;
        material(Stage.MASK, part, RateKind.TAPE_M2, "pricing.line.tape", masked, CostUnit.SQUARE_METRE);
        int quantity = question.quantity();
        material(Stage.PACK, part, RateKind.BAG, "pricing.line.bag", quantity, CostUnit.PIECE);
        material(Stage.PACK, part, RateKind.BOX, "pricing.line.box", quantity, CostUnit.PIECE);
        material(Stage.PACK, part, RateKind.LABEL, "pricing.line.label", quantity, CostUnit.PIECE);
    }

    private void material(Stage stage, CostPart part, RateKind kind, String text, double quantity, CostUnit unit) {
        MaterialPrices.Known price = materials
                .of(kind, rates.day())
                .orElseGet(() -> new MaterialPrices.Known(rates.money(kind), rates.source(kind)));
        spend(stage, CostLine.of(part, Sentence.of(text), quantity, unit, price.perUnit(), price.source()));
    }

    private void machine() {
        double hours = question.cutMinutes().toHours() * question.quantity();
        MachineHour machine = rates.machine();
        List<CostLine> parts = new ArrayList<>();
        parts.add(hourly("pricing.line.depreciation", hours, machine.depreciationPerHour(), RateKind.MACHINE_PRICE));
        parts.add(hourly("pricing.line.energy", hours, machine.energyPerHour(), RateKind.ENERGY_TARIFF));
        parts.add(hourly("pricing.line.upkeep", hours, machine.upkeepPerHour(), RateKind.MACHINE_UPKEEP_YEAR));
        for (MachineHour.WearPart worn : machine.wearParts()) {
            parts.add(CostLine.of(
                    CostPart.MACHINE,
                    rates.laser().isPresent()
                            ? Sentence.of("pricing.line.wear", worn.name())
                            : Sentence.of(worn.name()),
                    hours,
                    CostUnit.HOUR,
                    worn.perHour(),
                    rates.source(RateKind.LENS_PRICE)));
        }
        Source source = Source.of(
                rates.day(),
                "pricing.source.cut-estimate",
                decimal(question.cutMinutes().value()));
        spend(Stage.CUT, CostLine.sum(CostPart.MACHINE, Sentence.of("pricing.line.laser"), source, parts));
    }

    private CostLine hourly(String text, double hours, Money perHour, RateKind kind) {
        return CostLine.of(CostPart.MACHINE, Sentence.of(text), hours, CostUnit.HOUR, perHour, rates.source(kind));
    }

    private void hands() {
        for (StageWork work : question.work()) {
            double hours = work.forQuantity(question.quantity()).toHours();
            if (hours > 0) {
                Source source = Source.of(
                        rates.held(RateKind.WAGE_HOUR).from(),
                        "pricing.source.minutes",
                        decimal(work.setUp().value()),
                        decimal(work.perPuzzle().value()),
                        question.quantity());
                spend(
                        work.stage(),
                        CostLine.of(
                                CostPart.HANDS,
                                Sentence.of(work.stage().textKey()),
                                hours,
                                CostUnit.HOUR,
                                rates.money(RateKind.WAGE_HOUR),
                                source));
            }
        }
    }

    private void rejects() {
        Map<Stage, Percent> shares = new EnumMap<>(Stage.class);
        question.work().forEach(work -> shares.put(work.stage(), work.rejects()));
        List<StageByStage.Spent> stages = new ArrayList<>();
        for (Stage stage : Stage.values()) {
            stages.add(new StageByStage.Spent(
                    stage,
                    spent.getOrDefault(stage, Money.zero(rates.currency())),
                    shares.getOrDefault(stage, Percent.ZERO)));
        }
        for (StageByStage.Reached reached : StageByStage.costOfGood(stages)) {
            if (reached.remade().signum() > 0 && reached.lost().isPositive()) {
                Source source = Source.of(
                        rates.day(),
                        "pricing.source.rejects",
                        shares.get(reached.stage()).hundredths());
                // What is lost is kept exact; quantity × rate shows the same to the digits of the quantity.
                lines.add(new CostLine(
                        CostPart.REJECTS,
                        Sentence.of(reached.stage().textKey()),
                        reached.remade().multiply(BigDecimal.valueOf(question.quantity())),
                        CostUnit.PIECE,
                        reached.soFar().dividedBy(question.quantity()),
                        reached.lost(),
                        source,
                        List.of()));
            }
        }
    }

    private void overhead() {
        double hours = question.cutMinutes().toHours() * question.quantity();
        Money made = Money.sum(lines.stream().map(CostLine::amount).toList(), rates.currency());
        if (rates.money(RateKind.OVERHEAD_MACHINE_HOUR).isPositive()) {
            lines.add(CostLine.of(
                    CostPart.OVERHEAD,
                    Sentence.of("pricing.line.overhead-hour"),
                    hours,
                    CostUnit.HOUR,
                    rates.money(RateKind.OVERHEAD_MACHINE_HOUR),
                    rates.source(RateKind.OVERHEAD_MACHINE_HOUR)));
        }
        Percent share = rates.percent(RateKind.OVERHEAD_SHARE);
        if (share.hundredths().signum() > 0) {
            lines.add(CostLine.of(
                    CostPart.OVERHEAD,
                    Sentence.of("pricing.line.overhead-share"),
                    share.fraction(),
                    CostUnit.SHARE,
                    made,
                    rates.source(RateKind.OVERHEAD_SHARE)));
        }
    }

    private void spend(Stage stage, CostLine line) {
        spent.merge(stage, line.amount(), Money::plus);
        lines.add(line);
    }

    private static BigDecimal decimal(double value) {
        return BigDecimal.valueOf(Math.round(value * 100), 2).stripTrailingZeros();
    }
}
