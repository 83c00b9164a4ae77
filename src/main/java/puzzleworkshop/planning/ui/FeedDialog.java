package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import puzzleworkshop.display.PageAddress;
import puzzleworkshop.planning.feed.WeekFeed;
import puzzleworkshop.workshop.Workshop;

/** Makes the private link under which a calendar program finds the promised days. */
class FeedDialog extends Dialog {

    FeedDialog(WeekFeed feed, Workshop workshop, String who) {
        setHeaderTitle(getTranslation("planning.feed"));
        Paragraph state =
                new Paragraph(getTranslation(feed.isShared() ? "planning.feed.shared" : "planning.feed.none"));
        TextField link = new TextField(getTranslation("planning.feed.link"));
        link.setReadOnly(true);
        link.setWidthFull();
        link.setVisible(false);
        Button make = new Button(
                getTranslation("planning.feed.make"),
                e -> PageAddress.root(UI.getCurrent(), workshop.profile().publicUrl(), root -> {
                    link.setValue(root + "/calendar/" + feed.renew(who) + ".ics");
                    link.setVisible(true);
                    link.focus();
                    state.setText(getTranslation("planning.feed.once"));
                }));
        make.addThemeVariants(ButtonVariant.PRIMARY);
        Button end = new Button(getTranslation("planning.feed.end"), e -> {
            feed.end();
            link.setVisible(false);
            state.setText(getTranslation("planning.feed.none"));
        });
        add(new Paragraph(getTranslation("planning.feed.lead")), state, link);
        getFooter().add(end, make, new Button(getTranslation("planning.close"), e -> close()));
        setWidth("min(36rem, 95vw)");
    }
}
