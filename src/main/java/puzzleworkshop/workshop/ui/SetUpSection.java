package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.Component;

/** A part of Set-up that another room adds; beans of this type stand below the workshop's own, by place. */
public interface SetUpSection {

    int place();

    Component show();
}
