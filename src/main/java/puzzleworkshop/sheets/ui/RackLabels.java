package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Nav;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.SignedIn;

/** Says things about sheets the same way on all screens of the rack. */
@Component
public class RackLabels {

    private static final String[] DOORS = {"", "/enter", "/find", "/week", "/stock-take", "/lists", "/rules"};

    private final Formatter figures;
    private final RackSettings settings;
    private final SignedIn who;
    private final HouseUnits house;

    RackLabels(Formatter figures, RackSettings settings, SignedIn who, HouseUnits house) {
        this.figures = figures;
        this.settings = settings;
        this.who = who;
        this.house = house;
    }

    /** How long it has been in the rack: wood that lies long dries, bows or is forgotten. */
    public String age(Sheet sheet) {
        LocalDate came = LocalDate.ofInstant(sheet.enteredAt(), house.zone());
        return figures.text("sheets.age", ChronoUnit.DAYS.between(came, house.today()));
    }

    /** The ways between the screens of the rack; the one we stand on is marked. */
    public Nav doors(String here) {
        Nav doors = new Nav();
        doors.addClassName("sheets-doors");
        doors.setAriaLabel(figures.text("sheets.doors"));
        for (String door : DOORS) {
            if (door.equals("/rules") && !who.isOwner()) {
                continue;
            }
            Anchor link = new Anchor("sheets" + door, figures.text("sheets.door" + door.replace('/', '.')));
            if (door.equals(here)) {
                link.getElement().setAttribute("aria-current", "page");
            }
            doors.add(link);
        }
        return doors;
    }

    public Still state(SheetState state) {
        return new Still(stateMark(state));
    }

    /** The same within what only stands there. */
    Markup stateMark(SheetState state) {
        Verdict.Kind kind = switch (state) {
            case FREE -> Verdict.Kind.GOOD;
            case RESERVED -> Verdict.Kind.WAIT;
            case USED, WITHDRAWN -> Verdict.Kind.WARN;
            case SCRAPPED -> Verdict.Kind.BAD;
        };
        return Verdict.of(kind, figures.text("sheets.state." + state.name()));
    }

    /** Names by the id of a material, read once: for lists. */
    Function<String, String> materialNames() {
        Map<String, String> names =
                settings.materials().stream().collect(Collectors.toMap(Material::id, Material::name));
        return id -> names.getOrDefault(id, id);
    }

    /** Birch ply, craft, 3 mm. */
    public String kind(BoardFacts facts) {
        return kind(facts, materialNames());
    }

    public String kind(BoardFacts facts, Function<String, String> materials) {
        return materials.apply(facts.material()) + ", "
                + figures.text("sheets.grade." + facts.grade().name()) + ", " + figures.length(facts.thickness());
    }

    /** 700 × 400 mm, or for other shapes the size around it. */
    public String shape(Sheet sheet) {
        String size = figures.size(sheet.outline().bounds());
        return sheet.outline().isPlainRectangle() ? size : figures.text("sheets.shape.around", size);
    }
}
