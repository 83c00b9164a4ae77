package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H4;
import com.vaadin.flow.component.html.Paragraph;
import java.util.function.IntConsumer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.placing.LearnedPlace;

/** The fence's place for a board that lies in it: which way it lies is asked, for only the last one's is known. */
class FenceTake extends Div {

    FenceTake(LearnedPlace fence, Formatter figures, IntConsumer taken) {
        LiesTurned turned = new LiesTurned(fence.turns(), figures);
        turned.setId("jig-turned");
        Button take = new Button(figures.text("placing.jig.take"), event -> taken.accept(turned.getValue()));
        Div row = new Div(turned, take);
        row.addClassName("placing-jig-take");
        Paragraph why = new Paragraph(figures.text("placing.jig.take.why") + " " + FenceSection.words(fence, figures));
        why.addClassName("pw-small");
        addClassNames("placing-way", "pw-stack");
        add(new H4(figures.text("placing.way.jig")), row, why);
    }
}
