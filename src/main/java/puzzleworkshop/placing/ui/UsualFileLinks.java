package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Optional;
import puzzleworkshop.cutfiles.ui.CutFileLinks;
import puzzleworkshop.cutfiles.writing.CutHeat;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderCutFiles;
import puzzleworkshop.placing.LearnedPlaces;
import puzzleworkshop.placing.UsualFiles;
import puzzleworkshop.workshop.SignedIn;

/** The usual files of an order, each put on record when it is taken, with the setting they say large beside them. */
@org.springframework.stereotype.Component
class UsualFileLinks implements OrderCutFiles {

    private final UsualFiles files;
    private final LearnedPlaces learned;
    private final Formatter figures;
    private final SignedIn who;

    UsualFileLinks(UsualFiles files, LearnedPlaces learned, Formatter figures, SignedIn who) {
        this.files = files;
        this.learned = learned;
        this.figures = figures;
        this.who = who;
    }

    @Override
    public Component of(Order order) {
        Div all = new Div();
        all.addClassName("pw-stack");
        String by = who.name();
        CutFileLinks links = new CutFileLinks(
                order.number(), format -> files.write(order, format, by).bytes());
        Optional<UsualFiles.Said> setting = files.setting(order);
        if (setting.isEmpty()) {
            all.add(links, new Paragraph(figures.text("placing.usual.no-machine")));
            return all;
        }
        UsualFiles.Said said = setting.get();
        SmallText why = new SmallText(figures.text(
                said.job().isPresent() ? "placing.usual.of-job" : "placing.usual.of-board",
                said.machine().name()));
        all.add(new DialledSetting(said.machine(), said.parameters(), figures), links, why, heat(order, said));
        learned.byEyeOf(order, said.machine(), said.parameters())
                .ifPresent(eye -> all.add(PlaceWords.byEye(eye, said.machine(), figures)));
        return all;
    }

    /** Worked out beside the screen: a large puzzle takes a second the first time. */
    private Component heat(Order order, UsualFiles.Said said) {
        SmallText text = new SmallText();
        text.addAttachListener(attached -> {
            UI screen = attached.getUI(); // asked later, when the page may be left already, there is none
            UiPush.beside("heat of " + order.number(), () -> {
                CutHeat heat = files.heat(order, said);
                if (Double.isFinite(heat.soonestSeconds())) {
                    UiPush.tell(
                            screen,
                            () -> text.setText(figures.text(
                                    "placing.usual.heat",
                                    figures.number(heat.soonestSeconds(), 0),
                                    figures.number(heat.peakKelvin(), 0))));
                }
            });
        });
        return text;
    }
}
