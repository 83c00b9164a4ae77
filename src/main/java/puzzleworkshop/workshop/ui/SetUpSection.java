package puzzleworkshop.workshop.ui;

import java.util.List;

/** What another room adds to Set-up; beans of this type stand below the workshop's own parts, by place. */
public interface SetUpSection {

    int place();

    List<SetUpPart> parts();
}
