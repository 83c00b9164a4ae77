package puzzleworkshop.sheets;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.Currency;
import java.util.Optional;
import java.util.OptionalLong;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;

/** Reads a row of the rack as a sheet. */
final class SheetRow {

    private SheetRow() {}

    static SheetStore.Candidate candidate(ResultSet row, int n) throws SQLException {
        return new SheetStore.Candidate(
                new SheetId(row.getLong("id")), row.getString("outline"), Grain.valueOf(row.getString("grain")));
    }

    static Sheet sheet(ResultSet row, int n) throws SQLException {
        SheetId id = new SheetId(row.getLong("id"));
        double measured = row.getDouble("measured_mm");
        Optional<Length> calliper = row.wasNull() ? Optional.empty() : Optional.of(Length.mm(measured));
        long cut = row.getLong("from_cut");
        OptionalLong fromCut = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(cut);
        long reservation = row.getLong("reservation_id");
        Optional<Reservation> reserved =
                row.wasNull() ? Optional.empty() : Optional.of(reservation(id, reservation, row));
        BoardFacts facts = new BoardFacts(
                row.getString("material"),
                Grade.valueOf(row.getString("grade")),
                Length.mm(row.getDouble("nominal_mm")),
                calliper,
                Length.mm(row.getDouble("bow_mm")),
                BoardContamination.valueOf(row.getString("past")),
                Grain.valueOf(row.getString("grain")),
                row.getString("place"),
                row.getString("note"));
        return new Sheet(
                id,
                OutlineText.readMended(row.getString("outline")),
                facts,
                Money.of(row.getBigDecimal("cost"), Currency.getInstance(row.getString("currency"))),
                SheetState.valueOf(row.getString("state")),
                fromCut,
                row.getObject("entered_at", OffsetDateTime.class).toInstant(),
                row.getObject("state_since", OffsetDateTime.class).toInstant(),
                reserved,
                row.getBoolean("has_photo"),
                row.getLong("version"));
    }

    private static Reservation reservation(SheetId sheet, long id, ResultSet row) throws SQLException {
        return new Reservation(
                id,
                sheet,
                new OrderRef(new OrderId(row.getLong("order_id")), row.getString("order_number")),
                new Placement(row.getDouble("x_mm"), row.getDouble("y_mm"), row.getDouble("degrees")),
                Size.mm(row.getDouble("blank_width_mm"), row.getDouble("blank_height_mm")),
                row.getString("who"),
                row.getObject("reserved_at", OffsetDateTime.class).toInstant());
    }
}
