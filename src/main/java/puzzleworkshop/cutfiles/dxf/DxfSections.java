package puzzleworkshop.cutfiles.dxf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.measure.WorkLimit;

/** The sections of a DXF file with the things in them. */
final class DxfSections {

    private final Map<String, List<DxfThing>> sections = new HashMap<>();

    private DxfSections() {}

    static DxfSections of(DxfText rows, WorkLimit limit) {
        DxfSections all = new DxfSections();
        List<DxfThing> inside = null;
        int at = 0;
        while (at < rows.count() && rows.code(at) != 0) {
            at++; // comments
        }
        while (at < rows.count()) {
            int end = at + 1;
            while (end < rows.count() && rows.code(end) != 0) {
                end++;
            }
            limit.steps(1);
            DxfThing thing = new DxfThing(rows, kind(rows, at), at + 1, end);
            if (thing.kind().equals("SECTION")) {
                inside = all.sections.computeIfAbsent(thing.name(2), name -> new ArrayList<>());
                if (thing.name(2).equals("OBJECTS")) {
                    inside = null; // holds no lines, and often most of the file
                }
            } else if (thing.kind().equals("ENDSEC")) {
                inside = null;
            }
            if (inside != null) {
                inside.add(thing);
            }
            at = end;
        }
        return all;
    }

    private static String kind(DxfText rows, int row) {
        return rows.text(row).toUpperCase(java.util.Locale.ROOT);
    }

    /** In the file's order; the section's own rows come first. */
    List<DxfThing> of(String name) {
        return sections.getOrDefault(name, List.of());
    }
}
