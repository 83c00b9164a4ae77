package puzzleworkshop.cutting.ui.settings;

import puzzleworkshop.cutting.settings.SettingState;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;

/** How far a setting can be trusted, as a word with icon and colour. */
public class StateMark extends Verdict {

    public StateMark(SettingState state, Formatter figures) {
        super(kind(state), figures.text(state.textKey()));
    }

    private static Kind kind(SettingState state) {
        return switch (state) {
            case UNTRIED -> Kind.WAIT;
            case TRYING -> Kind.WARN;
            case PROVEN -> Kind.GOOD;
            case DOUBTFUL -> Kind.BAD;
        };
    }
}
