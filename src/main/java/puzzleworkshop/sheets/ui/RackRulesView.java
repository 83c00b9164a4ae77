package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.RolesAllowed;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.OffcutCost;
import puzzleworkshop.sheets.board.RackRules;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Workshop;

/** What is set for the whole rack: boards that can be bought, how cost is carried on, limits, standard blanks, materials. */
@Route("sheets/rules")
@PageTitle("Rules of the rack")
@RolesAllowed("OWNER")
@StyleSheet("context://sheets.css")
public class RackRulesView extends Div {

    /** Up to which bow a board is usually held down flat (common practice). */
    private static final Length USUAL_BOW = Length.mm(1);

    private final transient RackSettings settings;
    private final transient Workshop workshop;
    private final transient Formatter figures;
    private final transient RackLabels words;
    private final Div body = new Div();

    public RackRulesView(RackSettings settings, Workshop workshop, Formatter figures, RackLabels words) {
        this.settings = settings;
        this.workshop = workshop;
        this.figures = figures;
        this.words = words;
        addClassName("pw-page");
        PageHead head = new PageHead(figures.text("sheets.rules.title"));
        body.addClassName("sheets-one");
        add(head, words.doors("/rules"), body);
        fill();
    }

    private void fill() {
        body.removeAll();
        Div left = new Div(offers(), blanks());
        left.addClassName("sheets-column");
        Div right = new Div(limits(), materials());
        right.addClassName("sheets-column");
        body.add(left, right);
    }

    private Div offers() {
        Div section = section("sheets.rules.offers", "sheets.rules.offers.text");
        Function<String, String> materials = words.materialNames();
        for (BoardOffer offer : settings.offers()) {
            Button gone = new Button(figures.text("sheets.rules.nolonger"), event -> {
                settings.save(offer.withdrawn());
                fill();
            });
            gone.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
            Div line = new Div(
                    new Span(offer.name()),
                    new Span(materials.apply(offer.material()) + " " + figures.length(offer.thickness())),
                    new Span(figures.size(offer.size())),
                    price(offer),
                    gone);
            line.addClassName("sheets-line");
            section.add(line);
        }
        section.add(newOffer());
        return section;
    }

    /** What a board costs changes more often than the board does. */
    private Div price(BoardOffer offer) {
        AmountField price = AmountField.money("", offer.price().currency())
                .signed(offer.price().currency());
        price.setAriaLabel(figures.text("sheets.rules.offer.price", offer.name()));
        price.setValue(offer.price().rounded().amount());
        Button save = new Button(figures.text("sheets.rules.offer.save"), event -> {
            boolean done = Feedback.unlessRefused(
                    figures,
                    "sheets.one.saved",
                    () -> settings.save(offer.at(price.needed(offer.price().currency()))));
            if (done) {
                fill();
            }
        });
        save.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        save.setAriaLabel(figures.text("sheets.rules.offer.save.of", offer.name()));
        Div row = new Div(price, save);
        row.addClassNames("pw-row", "sheets-price");
        return row;
    }

    private Div newOffer() {
        TextField name = new TextField(figures.text("sheets.rules.offer.name"));
        Select<Material> material = new Select<>();
        material.setLabel(figures.text("sheets.material"));
        material.setItems(settings.materials());
        material.setItemLabelGenerator(Material::name);
        settings.materials().stream().findFirst().ifPresent(material::setValue);
        Select<Grade> grade = new Select<>();
        grade.setLabel(figures.text("sheets.grade"));
        grade.setItems(Grade.values());
        grade.setItemLabelGenerator(g -> figures.text("sheets.grade." + g.name()));
        grade.setValue(Grade.CRAFT);
        LengthField thickness =
                length("sheets.thickness", workshop.tradeNumbers().boardThickness());
        LengthField width = length("sheets.steps.width", null);
        LengthField height = length("sheets.steps.height", null);
        AmountField price = AmountField.money(
                figures.text("sheets.rules.price", workshop.currency().getSymbol()), workshop.currency());
        Button add = new Button(figures.text("sheets.rules.offer.add"), event -> {
            boolean done = Feedback.unlessRefused(figures, "sheets.one.saved", () -> {
                Size size = new Size(required(width), required(height));
                Money money = price.needed(workshop.currency());
                settings.save(new BoardOffer(
                        0,
                        name.getValue(),
                        material.getValue().id(),
                        grade.getValue(),
                        required(thickness),
                        size,
                        Grain.NONE,
                        money,
                        true));
            });
            if (done) {
                fill();
            }
        });
        add.addThemeVariants(ButtonVariant.PRIMARY);
        Div row = new Div(name, material, grade, thickness, width, height, price, add);
        row.addClassNames("pw-row", "sheets-wish");
        return row;
    }

    private Div blanks() {
        Div section = section("sheets.rules.blanks", "sheets.rules.blanks.text");
        List<Size> blanks = new ArrayList<>(settings.standardBlanks());
        for (Size blank : blanks) {
            Button gone = new Button(figures.text("sheets.rules.remove"), event -> {
                settings.saveStandardBlanks(
                        blanks.stream().filter(other -> !other.equals(blank)).toList());
                fill();
            });
            gone.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
            gone.setAriaLabel(figures.text("sheets.rules.removeblank", blank));
            Div line = new Div(new Span(figures.size(blank)), gone);
            line.addClassName("sheets-line");
            section.add(line);
        }
        LengthField width = length("sheets.steps.width", null);
        LengthField height = length("sheets.steps.height", null);
        Button add = new Button(figures.text("sheets.rules.blank.add"), event -> {
            boolean done = Feedback.unlessRefused(figures, "sheets.one.saved", () -> {
                blanks.add(new Size(required(width), required(height)));
                settings.saveStandardBlanks(blanks);
            });
            if (done) {
                fill();
            }
        });
        Div row = new Div(width, height, add);
        row.addClassNames("pw-row", "sheets-wish");
        section.add(row);
        return section;
    }

    private Div limits() {
        Div section = section("sheets.rules.limits", "sheets.rules.limits.text");
        RackRules rules = settings.rules();
        Select<OffcutCost> cost = new Select<>();
        cost.setLabel(figures.text("sheets.rules.cost"));
        cost.setItems(OffcutCost.values());
        cost.setItemLabelGenerator(c -> figures.text("sheets.rules.cost." + c.name()));
        cost.setValue(rules.offcutCost());
        AmountField share = AmountField.percent(figures.text("sheets.rules.share"), 100, 2)
                .saying(Sentence.of("sheets.rules.share.range"));
        share.show(rules.share().hundredths());
        LengthField width = length("sheets.rules.largestwidth", rules.largest().width());
        LengthField height =
                length("sheets.rules.largestheight", rules.largest().height());
        LengthField kerf = length("sheets.rules.kerf", rules.kerf());
        LengthField bow = length("sheets.rules.bow", rules.mostBow());
        LengthField slack = length("sheets.rules.slack", rules.thicknessSlack());
        Checkbox sawn = new Checkbox(figures.text("sheets.rules.sawn"), rules.sawnFirst());
        Button save = new Button(
                figures.text("sheets.one.save"),
                event -> Feedback.unlessRefused(figures, "sheets.one.saved", () -> {
                    settings.save(new RackRules(
                            new Size(within(width, 100, 10_000), within(height, 100, 10_000)),
                            within(kerf, 0, 10),
                            within(bow, 0, 50),
                            within(slack, 0, 2),
                            cost.getValue(),
                            new Percent(share.needed()),
                            Boolean.TRUE.equals(sawn.getValue())));
                }));
        save.addThemeVariants(ButtonVariant.PRIMARY);
        Div fields = new Div(cost, share, width, height, kerf, bow, slack);
        fields.addClassName("sheets-facts");
        section.add(fields, sawn, save);
        return section;
    }

    private Div materials() {
        Div section = section("sheets.rules.materials", "sheets.rules.materials.text");
        settings.materials().forEach(material -> {
            Div line =
                    new Div(new Span(material.name()), new Span(figures.number(material.densityKgM3(), 0) + " kg/m³"));
            line.addClassName("sheets-line");
            section.add(line);
        });
        TextField name = new TextField(figures.text("sheets.rules.material.name"));
        NumberField density = new NumberField(figures.text("sheets.rules.density"));
        Button add = new Button(figures.text("sheets.rules.material.add"), event -> {
            boolean done = Feedback.unlessRefused(
                    figures,
                    "sheets.one.saved",
                    () -> settings.addMaterial(name.getValue(), density.getValue() == null ? 0 : density.getValue()));
            if (done) {
                fill();
            }
        });
        Div row = new Div(name, density, add);
        row.addClassNames("pw-row", "sheets-wish");
        section.add(row);
        return section;
    }

    private LengthField length(String key, Length value) {
        LengthField field = new LengthField(figures.text(key), figures.units());
        field.setValue(value);
        return field;
    }

    private Length required(LengthField field) {
        return within(field, 0.1, 10_000);
    }

    private Length within(LengthField field, double least, double most) {
        Length value = field.getValue();
        boolean wrong = value == null || value.mm() < least || value.mm() > most;
        field.setInvalid(wrong);
        if (wrong) {
            throw new Refused("sheets.rules.range", Length.mm(least), Length.mm(most));
        }
        return value;
    }

    private Div section(String title, String text) {
        Paragraph about = new Paragraph(figures.text(text, USUAL_BOW));
        about.addClassName("pw-soft");
        PageSection section = new PageSection(figures.text(title), about);
        return section;
    }
}
