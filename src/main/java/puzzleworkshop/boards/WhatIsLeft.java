package puzzleworkshop.boards;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.find.Keeping;
import puzzleworkshop.sheets.find.LearnedSizes;

/** What is left of a held sheet, part by part, and what of it is worth keeping: what another blank waits for stays in any case. */
@Service
@Transactional(readOnly = true)
public class WhatIsLeft {

    private final SheetRack rack;
    private final SheetHolds holds;
    private final LearnedSizes learned;
    private final BoardStore store;

    WhatIsLeft(SheetRack rack, SheetHolds holds, LearnedSizes learned, BoardStore store) {
        this.rack = rack;
        this.holds = holds;
        this.learned = learned;
        this.store = store;
    }

    /** Largest first. */
    public List<LeftPart> of(SheetId id) {
        Sheet sheet = rack.find(id).orElseThrow(() -> new Refused("sheets.unknown", id.toString()));
        Remainder rest = holds.proposal(id);
        List<Keeping> keeping = learned.keeping(sheet, rest);
        List<FollowingBlank> following = store.following(id);
        List<LeftPart> left = new ArrayList<>();
        for (int i = 0; i < keeping.size(); i++) {
            Keeping one = keeping.get(i);
            Remainder.Part part = one.part();
            Optional<FollowingBlank> waits = following.stream()
                    .filter(blank -> RectanglePlaces.accepts(part.outline(), blank.blank(), blank.placement()))
                    .findFirst();
            left.add(waits.map(blank -> new LeftPart(
                            part,
                            true,
                            Sentence.of("sheets.keep.follows", blank.order().number()),
                            Optional.empty()))
                    .orElseGet(() -> new LeftPart(part, one.worthKeeping(), one.why(), one.sawing())));
        }
        return left;
    }
}
