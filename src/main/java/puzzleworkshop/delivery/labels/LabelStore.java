package puzzleworkshop.delivery.labels;

import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class LabelStore {

    private final JdbcClient jdbc;

    LabelStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    LabelSettings read() {
        return jdbc.sql("select * from delivery_settings")
                .query((row, n) -> new LabelSettings(
                        row.getString("label_words"),
                        row.getString("care_words"),
                        row.getString("hs_code"),
                        row.getString("contents"),
                        Optional.of(row.getString("gtin"))
                                .filter(g -> !g.isEmpty())
                                .map(Gtin::new),
                        LabelKind.valueOf(row.getString("label_kind"))))
                .single();
    }

    void save(LabelSettings settings) {
        jdbc.sql("""
            update delivery_settings set label_words = :words, care_words = :care, hs_code = :hs, contents = :contents,
                gtin = :gtin, label_kind = :kind
            """)
                .param("words", settings.labelWords())
                .param("care", settings.careWords())
                .param("hs", settings.hsCode())
                .param("contents", settings.contents())
                .param("gtin", settings.gtin().map(Gtin::digits).orElse(""))
                .param("kind", settings.kind().name())
                .update();
    }
}
