package puzzleworkshop;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.display.Markup;

/** One palette: the tokens in {@code workshop.css}. A room's style sheet uses them and has no colour of its own. */
@DisplayNameGeneration(ReplaceUnderscores.class)
abstract class StyleSheetRules {

    private static final Path FOLDER = Path.of("frontend");
    private static final Path TOKENS = FOLDER.resolve("workshop.css");

    /** Brought by the shell to every page. */
    private static final Set<String> EVERYWHERE = Set.of("workshop.css", "shell.css");

    /** The ways CSS Color 4 writes a colour by its numbers, and the names one is tempted to write. */
    private static final Pattern COLOUR = Pattern.compile("#[0-9a-fA-F]{3,8}\\b"
            + "|\\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color)\\("
            + "|:[^;{}]*(?<![\\w-])(?:white|black|gr[ae]y|red|green|blue|yellow|orange)(?![\\w-])");

    private static List<Path> sheets() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.filter(file -> file.toString().endsWith(".css")).toList();
        }
    }

    private static String withoutComments(Path sheet) throws IOException {
        return Pattern.compile("/\\*.*?\\*/", Pattern.DOTALL)
                .matcher(Files.readString(sheet))
                .replaceAll("");
    }

    @Test
    void no_room_has_a_colour_of_its_own() throws IOException {
        Set<String> own = new TreeSet<>();
        for (Path sheet : sheets()) {
            if (!sheet.equals(TOKENS)) {
                withoutComments(sheet)
                        .lines()
                        .filter(line -> COLOUR.matcher(line).find())
                        .forEach(line -> own.add(sheet.getFileName() + ": " + line.strip()));
            }
        }
        assertThat(sheets()).hasSizeGreaterThan(10);
        assertThat(own).isEmpty();
        assertThat(COLOUR.matcher(Files.readString(TOKENS)).find())
                .as("the pattern finds colours where there are some")
                .isTrue();
    }

    /** A sheet comes to the browser with a component; markup is none, so the screen that takes it has to bring the sheet. */
    @Test
    void who_shows_another_screens_markup_brings_its_style_sheet() {
        Set<String> without = new TreeSet<>();
        int taken = 0;
        for (JavaClass type : FloorsTest.HOUSE) {
            for (JavaMethodCall call : type.getMethodCallsFromSelf()) {
                JavaClass maker = call.getTargetOwner();
                if (!maker.equals(type) && call.getTarget().getRawReturnType().isEquivalentTo(Markup.class)) {
                    Set<String> missing = sheetsOf(maker);
                    taken += missing.size();
                    missing.removeAll(sheetsOf(type));
                    missing.forEach(sheet -> without.add(type.getSimpleName() + " shows what " + maker.getSimpleName()
                            + " draws without its " + sheet));
                }
            }
        }
        assertThat(taken).as("markup with a sheet of its own that others show").isPositive();
        assertThat(without).isEmpty();
    }

    /**
     * A page that is opened first knows no sheet that another page would have brought. Who names a class of a sheet brings
     * the sheet, or is only made by those who do.
     */
    @Test
    void who_names_a_class_of_a_style_sheet_brings_the_sheet() throws IOException {
        Map<String, String> sheetOf = new HashMap<>();
        for (Path sheet : sheets()) {
            String name = sheet.getFileName().toString();
            if (!EVERYWHERE.contains(name)) {
                names("\\.([a-z][\\w-]*)", withoutComments(sheet))
                        .forEach(each -> sheetOf.put(each, "context://" + name));
            }
        }
        for (String name : EVERYWHERE) {
            names("\\.([a-z][\\w-]*)", withoutComments(FOLDER.resolve(name))).forEach(sheetOf::remove);
        }
        Map<String, Set<JavaClass>> makers = new HashMap<>();
        Map<String, Set<String>> brought = new HashMap<>();
        for (JavaClass type : FloorsTest.HOUSE) {
            if (type.isAssignableTo(Component.class)) {
                for (JavaClass self = type; ; self = self.getRawSuperclass().orElseThrow()) {
                    brought.computeIfAbsent(top(type), any -> new TreeSet<>()).addAll(sheetsOf(self));
                    if (self.isEquivalentTo(Component.class)) {
                        break;
                    }
                }
            }
            type.getCodeUnitCallsFromSelf().stream()
                    .flatMap(call -> withBeans(call.getTargetOwner()))
                    .filter(made -> !made.equals(top(type)))
                    .forEach(made ->
                            makers.computeIfAbsent(made, any -> new HashSet<>()).add(type));
        }
        Set<String> without = new TreeSet<>();
        int named = 0;
        for (JavaClass type : FloorsTest.HOUSE) {
            Path source = Path.of("src/main/java", type.getName().replace('.', '/') + ".java");
            if (!Files.exists(source)) {
                continue; // within another's file
            }
            for (String word : names("\"([a-z][\\w -]*)\"", Files.readString(source))) {
                for (String each : word.split(" ")) {
                    String sheet = sheetOf.get(each);
                    if (sheet != null && each.contains("-")) {
                        named++;
                        if (!isBrought(type.getName(), sheet, makers, brought, new HashSet<>())) {
                            without.add(type.getSimpleName() + " names " + each + " without " + sheet);
                        }
                    }
                }
            }
        }
        assertThat(named).as("classes of sheets that are named").isGreaterThan(200);
        assertThat(without).isEmpty();
    }

    private static boolean isBrought(
            String type,
            String sheet,
            Map<String, Set<JavaClass>> makers,
            Map<String, Set<String>> brought,
            Set<String> seen) {
        if (brought.getOrDefault(type, Set.of()).contains(sheet)) {
            return true;
        }
        Set<String> by = makers.getOrDefault(type, Set.of()).stream()
                .map(StyleSheetRules::top)
                .collect(Collectors.toCollection(TreeSet::new));
        // in a circle the question is answered by those who stand outside it
        return !by.isEmpty()
                && by.stream().allMatch(maker -> !seen.add(maker) || isBrought(maker, sheet, makers, brought, seen));
    }

    /** A part that is a bean is asked by its interface. */
    private static Stream<String> withBeans(JavaClass called) {
        return called.isInterface() && called.getPackageName().startsWith("puzzleworkshop")
                ? called.getAllSubclasses().stream().map(StyleSheetRules::top)
                : Stream.of(top(called));
    }

    private static String top(JavaClass type) {
        return type.getEnclosingClass().map(StyleSheetRules::top).orElse(type.getName());
    }

    private static Set<String> sheetsOf(JavaClass type) {
        return Stream.of(type.reflect().getAnnotationsByType(StyleSheet.class))
                .map(StyleSheet::value)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void every_token_that_is_used_is_there() throws IOException {
        Set<String> known = names("(--pw-[\\w-]+)\\s*:", Files.readString(TOKENS));
        Set<String> missing = new TreeSet<>();
        for (Path sheet : sheets()) {
            String text = Files.readString(sheet);
            Set<String> used = names("var\\((--pw-[\\w-]+)", text);
            used.removeAll(known);
            used.removeAll(names("(--pw-[\\w-]+)\\s*:", text));
            used.forEach(name -> missing.add(sheet.getFileName() + ": " + name));
        }
        assertThat(missing).isEmpty();
    }

    private static Set<String> names(String pattern, String text) {
        Set<String> names = new TreeSet<>();
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        while (matcher.find()) {
            names.add(matcher.group(1));
        }
        return names;
    }
}
