package puzzleworkshop.orders;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.workshop.Stage;

/** How an order lies in its row, both ways. */
final class OrderRow {

    /** What {@link #order} reads: everything but the price as it was worked out, a page of JSON that nobody asks for with it. */
    static final String COLUMNS = """
        o.id, o.number, o.customer_id, o.state, o.quantity, o.width_mm, o.height_mm, o.piece_columns, o.piece_rows,
            o.pattern_seed, o.pattern_design, o.cut_style, o.outline_kind, o.outline_measure_mm, o.kerf_mm, o.intended_age,
            o.tray, o.pieces, o.shape_names, o.shape_outlines, o.uneven_pieces, o.kept_whole, o.board_material,
            o.board_grade, o.board_thickness_mm, o.picture_id, o.crop_left, o.crop_top, o.crop_width, o.crop_height,
            o.crop_turns, o.crop_fit, o.crop_border, o.crop_edge, o.soft_accepted, o.approved_at, o.approved_by,
            o.wanted_by, o.promised_on, o.rush, o.laser_minutes, o.price_net, o.price_vat, o.cost, o.currency,
            o.delivery_way, o.valid_until, o.next_stage, o.note, o.created_at, o.confirmed_at, o.handed_over_at,
            o.version, c.name as customer_name, c.contact as customer_contact, c.address as customer_address\
        """;

    private OrderRow() {}

    static Order order(ResultSet row) throws SQLException {
        return new Order(
                new OrderId(row.getLong("id")),
                row.getString("number"),
                new Customer(
                        row.getLong("customer_id"),
                        row.getString("customer_name"),
                        row.getString("customer_contact"),
                        row.getString("customer_address")),
                row.getInt("quantity"),
                puzzle(row),
                new BoardKind(
                        row.getString("board_material"),
                        row.getString("board_grade"),
                        Length.mm(row.getDouble("board_thickness_mm"))),
                picture(row),
                row.getString("soft_accepted"),
                approval(row),
                new DeliveryTerms(
                        day(row, "wanted_by"),
                        day(row, "promised_on"),
                        row.getBoolean("rush"),
                        Optional.ofNullable(row.getObject("delivery_way", Long.class))),
                Minutes.of(row.getDouble("laser_minutes")),
                price(row),
                row.getDate("valid_until").toLocalDate(),
                row.getString("note"),
                new OrderCourse(
                        OrderState.valueOf(row.getString("state")),
                        Optional.ofNullable(row.getString("next_stage")).map(Stage::valueOf),
                        row.getTimestamp("created_at").toInstant(),
                        OrderStore.instant(row, "confirmed_at"),
                        OrderStore.instant(row, "handed_over_at")),
                row.getLong("version"));
    }

    static StatementSpec bind(StatementSpec sql, OrderDraft draft) {
        PatternSpec pattern = draft.puzzle().pattern();
        AgreedPrice price = AgreedPrice.of(draft.price().answer());
        Optional<Crop> crop = draft.picture().map(FramedPicture::crop);
        return sql.param("quantity", draft.quantity())
                .param("width", pattern.size().width().mm())
                .param("height", pattern.size().height().mm())
                .param("columns", pattern.grid().columns())
                .param("rows", pattern.grid().rows())
                .param("seed", pattern.seed())
                .param("design", pattern.design())
                .param("style", pattern.style().name())
                .param("outline", pattern.outline().kind().name())
                .param("outlineMeasure", pattern.outline().measure().mm())
                .param("kerf", pattern.kerf().mm())
                .param("age", draft.puzzle().age().name())
                .param("tray", draft.puzzle().tray())
                .param("pieces", draft.puzzle().pieces())
                .param(
                        "shapeNames",
                        pattern.shapes().stream().map(PersonalShape::name).toArray(String[]::new))
                .param(
                        "shapeOutlines",
                        pattern.shapes().stream()
                                .map(PersonalShape::outlineText)
                                .toArray(String[]::new))
                .param("uneven", pattern.layout().uneven())
                .param(
                        "keptWhole",
                        pattern.layout().keptWhole().stream()
                                .flatMap(place -> Stream.of(
                                        place.middle().xMm(),
                                        place.middle().yMm(),
                                        place.halfWidthMm(),
                                        place.halfHeightMm()))
                                .toArray(Double[]::new))
                .param("material", draft.board().material())
                .param("grade", draft.board().grade())
                .param("thickness", draft.board().thickness().mm())
                .param("picture", draft.picture().map(p -> p.picture().value()).orElse(null))
                .param("cropLeft", crop.map(Crop::left).orElse(null))
                .param("cropTop", crop.map(Crop::top).orElse(null))
                .param("cropWidth", crop.map(Crop::width).orElse(null))
                .param("cropHeight", crop.map(Crop::height).orElse(null))
                .param("cropTurns", crop.map(Crop::quarterTurns).orElse(null))
                .param("cropFit", crop.map(c -> c.fit().name()).orElse(null))
                .param("cropBorder", crop.map(Crop::borderColour).orElse(null))
                .param("cropEdge", crop.map(c -> c.edge().name()).orElse(null))
                .param("softAccepted", draft.softAccepted())
                .param("wantedBy", draft.delivery().wantedBy().orElse(null))
                .param("promised", draft.delivery().promised().orElse(null))
                .param("rush", draft.delivery().rush())
                .param("laser", draft.laser().value())
                .param("net", price.net().amount())
                .param("vat", price.vat().amount())
                .param("gross", price.gross().amount())
                .param("cost", price.cost().amount())
                .param("currency", price.net().currency().getCurrencyCode())
                .param("keptPrice", draft.price().toJson())
                .param("way", draft.delivery().way().orElse(null))
                .param("validUntil", draft.validUntil())
                .param("note", draft.note());
    }

    private static Puzzle puzzle(ResultSet row) throws SQLException {
        PatternSpec pattern = new PatternSpec(
                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
                new PieceGrid(row.getInt("piece_columns"), row.getInt("piece_rows")),
                row.getLong("pattern_seed"),
                CutStyle.valueOf(row.getString("cut_style")),
                new PuzzleEdge(
                        PuzzleEdge.Kind.valueOf(row.getString("outline_kind")),
                        Length.mm(row.getDouble("outline_measure_mm"))),
                Length.mm(row.getDouble("board_thickness_mm")),
                Length.mm(row.getDouble("kerf_mm")),
                shapes(row),
                row.getInt("pattern_design"),
                PieceLayout.of(row.getBoolean("uneven_pieces"), keptWhole(row)));
        return new Puzzle(
                pattern,
                IntendedAge.valueOf(row.getString("intended_age")),
                row.getBoolean("tray"),
                Optional.ofNullable(row.getObject("pieces", Integer.class))
                        .orElse(pattern.grid().pieces()));
    }

    private static List<PersonalShape> shapes(ResultSet row) throws SQLException {
        String[] names = (String[]) row.getArray("shape_names").getArray();
        String[] outlines = (String[]) row.getArray("shape_outlines").getArray();
        return IntStream.range(0, names.length)
                .mapToObj(i -> PersonalShape.kept(names[i], outlines[i]))
                .toList();
    }

    private static List<KeptWhole> keptWhole(ResultSet row) throws SQLException {
        Double[] numbers = (Double[]) row.getArray("kept_whole").getArray();
        return IntStream.range(0, numbers.length / 4)
                .mapToObj(i -> new KeptWhole(
                        Point.of(numbers[4 * i], numbers[4 * i + 1]), numbers[4 * i + 2], numbers[4 * i + 3]))
                .toList();
    }

    private static Optional<FramedPicture> picture(ResultSet row) throws SQLException {
        UUID picture = row.getObject("picture_id", UUID.class);
        if (picture == null) {
            return Optional.empty();
        }
        Crop crop = new Crop(
                row.getDouble("crop_left"),
                row.getDouble("crop_top"),
                row.getDouble("crop_width"),
                row.getDouble("crop_height"),
                row.getInt("crop_turns"),
                Crop.Fit.valueOf(row.getString("crop_fit")),
                row.getString("crop_border"),
                Crop.Edge.valueOf(row.getString("crop_edge")));
        return Optional.of(new FramedPicture(new PictureId(picture), crop));
    }

    private static Optional<Approval> approval(ResultSet row) throws SQLException {
        String by = row.getString("approved_by");
        return OrderStore.instant(row, "approved_at").map(at -> new Approval(at, by));
    }

    private static AgreedPrice price(ResultSet row) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("currency"));
        return new AgreedPrice(
                Money.of(row.getBigDecimal("price_net"), currency),
                Money.of(row.getBigDecimal("price_vat"), currency),
                Money.of(row.getBigDecimal("cost"), currency));
    }

    private static Optional<LocalDate> day(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, LocalDate.class));
    }
}
