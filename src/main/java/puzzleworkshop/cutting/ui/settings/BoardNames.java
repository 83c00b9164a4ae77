package puzzleworkshop.cutting.ui.settings;

import java.util.List;
import org.springframework.stereotype.Component;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;

/** Kinds of board in people's words: Birch ply, craft, 3 mm. */
@Component
public class BoardNames {

    private final RackSettings rack;
    private final Formatter figures;

    BoardNames(RackSettings rack, Formatter figures) {
        this.rack = rack;
        this.figures = figures;
    }

    public String of(BoardKind board) {
        return figures.text("cutting.board", material(board.material()), grade(board.grade()), board.thickness());
    }

    /** Without the thickness. */
    String family(BoardKind board) {
        return figures.text("cutting.board.family", material(board.material()), grade(board.grade()));
    }

    List<Material> materials() {
        return rack.materials();
    }

    String grade(String code) {
        return figures.text("sheets.grade." + code);
    }

    private String material(String id) {
        return rack.materials().stream()
                .filter(m -> m.id().equals(id))
                .findFirst()
                .map(Material::name)
                .orElse(id);
    }
}
