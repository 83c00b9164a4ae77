package puzzleworkshop.sheets.board;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;

/** What is set for the whole rack: materials, boards to buy, rules, standard blanks. */
@Repository
public class RackStore {

    private final JdbcClient jdbc;

    RackStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public List<Material> materials() {
        return jdbc.sql("select id, name, density_kg_m3 from board_material where used order by name")
                .query((row, n) ->
                        new Material(row.getString("id"), row.getString("name"), row.getDouble("density_kg_m3")))
                .list();
    }

    void save(Material material) {
        jdbc.sql("""
            insert into board_material (id, name, density_kg_m3, source) values (:id, :name, :density, '')
            on conflict (id) do update set name = excluded.name, density_kg_m3 = excluded.density_kg_m3, used = true
            """)
                .param("id", material.id())
                .param("name", material.name().strip())
                .param("density", material.densityKgM3())
                .update();
    }

    RackRules rules() {
        return jdbc.sql("select * from sheet_rule")
                .query((row, n) -> new RackRules(
                        Size.mm(row.getDouble("largest_width_mm"), row.getDouble("largest_height_mm")),
                        Length.mm(row.getDouble("kerf_mm")),
                        Length.mm(row.getDouble("most_bow_mm")),
                        Length.mm(row.getDouble("thickness_slack_mm")),
                        OffcutCost.valueOf(row.getString("offcut_cost")),
                        new Percent(row.getBigDecimal("share_percent")),
                        row.getBoolean("sawn_first")))
                .single();
    }

    void save(RackRules rules) {
        jdbc.sql("""
            update sheet_rule set largest_width_mm = :width, largest_height_mm = :height, kerf_mm = :kerf,
                most_bow_mm = :bow, thickness_slack_mm = :slack, offcut_cost = :cost, share_percent = :share,
                sawn_first = :sawn
            """)
                .param("width", rules.largest().width().mm())
                .param("height", rules.largest().height().mm())
                .param("kerf", rules.kerf().mm())
                .param("bow", rules.mostBow().mm())
                .param("slack", rules.thicknessSlack().mm())
                .param("cost", rules.offcutCost().name())
                .param("share", rules.share().hundredths())
                .param("sawn", rules.sawnFirst())
                .update();
    }

    List<Size> standardBlanks() {
        return jdbc.sql("select width_mm, height_mm from standard_blank order by width_mm * height_mm")
                .query((row, n) -> Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")))
                .list();
    }

    void saveStandardBlanks(List<Size> blanks) {
        jdbc.sql("delete from standard_blank").update();
        blanks.stream()
                .distinct()
                .forEach(size -> jdbc.sql("insert into standard_blank (width_mm, height_mm) values (:width, :height)")
                        .param("width", size.width().mm())
                        .param("height", size.height().mm())
                        .update());
    }

    List<BoardOffer> offers() {
        return jdbc.sql("select * from board_offer where offered order by material, thickness_mm, width_mm * height_mm")
                .query(RackStore::offer)
                .list();
    }

    Optional<BoardOffer> offer(long id) {
        return jdbc.sql("select * from board_offer where id = :id")
                .param("id", id)
                .query(RackStore::offer)
                .optional();
    }

    private static BoardOffer offer(ResultSet row, int n) throws SQLException {
        return new BoardOffer(
                row.getLong("id"),
                row.getString("name"),
                row.getString("material"),
                Grade.valueOf(row.getString("grade")),
                Length.mm(row.getDouble("thickness_mm")),
                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
                Grain.valueOf(row.getString("grain")),
                Money.of(row.getBigDecimal("price"), Currency.getInstance(row.getString("currency"))),
                row.getBoolean("offered"));
    }

    void save(BoardOffer offer) {
        String sql = offer.id() == 0 ? """
            insert into board_offer (name, material, grade, thickness_mm, width_mm, height_mm, grain, price, currency, offered)
            values (:name, :material, :grade, :thickness, :width, :height, :grain, :price, :currency, :offered)
            """ : """
                update board_offer set name = :name, material = :material, grade = :grade, thickness_mm = :thickness,
                    width_mm = :width, height_mm = :height, grain = :grain, price = :price, currency = :currency,
                    offered = :offered
                where id = :id
                """;
        JdbcClient.StatementSpec statement = jdbc.sql(sql)
                .param("name", offer.name().strip())
                .param("material", offer.material())
                .param("grade", offer.grade().name())
                .param("thickness", offer.thickness().mm())
                .param("width", offer.size().width().mm())
                .param("height", offer.size().height().mm())
                .param("grain", offer.grain().name())
                .param("price", offer.price().amount())
                .param("currency", offer.price().currency().getCurrencyCode())
                .param("offered", offer.offered());
        (offer.id() == 0 ? statement : statement.param("id", offer.id())).update();
    }
}
