package puzzleworkshop.wood.play;

import java.util.List;

/**
 * What to do in a period.
 *
 * @param bought offers taken, by their place in the list of offers; the first gets the next number, and so on
 * @param cuts in the order in which they are cut; one for each blank that has a place
 * @param thrown numbers of the boards whose rest is not kept
 */
public record WoodDecision(List<Integer> bought, List<CutAt> cuts, List<Integer> thrown) {

    public WoodDecision {
        bought = List.copyOf(bought);
        cuts = List.copyOf(cuts);
        thrown = List.copyOf(thrown);
    }
}
