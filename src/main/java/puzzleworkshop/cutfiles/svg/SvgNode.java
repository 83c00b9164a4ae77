package puzzleworkshop.cutfiles.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** One element of an SVG file. Elements of other namespaces stay for the counting of style sheets; they draw nothing. */
final class SvgNode {

    /** Local name; of another namespace: with its address in front. */
    final String name;

    final SvgNode parent;
    /** Place among its parent's elements, from 0. */
    final int place;

    private final String[] attributes;
    final List<SvgNode> children = new ArrayList<>(0);
    /** Letters between its tags. */
    int letters;
    /** What stands between the tags of a style sheet. */
    final StringBuilder text = new StringBuilder(0);
    /** What style sheets and attributes say, before inheritance; made once. */
    Map<String, String> declared;

    /** @param attributes names and values in turns */
    SvgNode(String name, SvgNode parent, String[] attributes) {
        this.name = name;
        this.parent = parent;
        this.place = parent == null ? 0 : parent.children.size();
        this.attributes = attributes;
    }

    /** Empty where it is missing. */
    String attribute(String wanted) {
        for (int i = 0; i < attributes.length; i += 2) {
            if (attributes[i].equals(wanted)) {
                return attributes[i + 1];
            }
        }
        return "";
    }

    boolean has(String wanted) {
        for (int i = 0; i < attributes.length; i += 2) {
            if (attributes[i].equals(wanted)) {
                return true;
            }
        }
        return false;
    }

    String[] attributes() {
        return attributes;
    }
}
