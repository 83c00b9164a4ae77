package puzzleworkshop;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.server.streams.UploadHandler;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.nio.file.Paths;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import puzzleworkshop.display.fields.FileUpload;

/** The house has floors: a room knows rooms below it or beside it, never one above. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class FloorsTest {

    /** From the ground up; the same list stands in DEVELOPERS.md with what each room holds. */
    static final List<List<String>> FLOORS = List.of(
            List.of("measure", "geometry", "camera", "runtime", "display", "bookings"),
            List.of("workshop", "artwork", "machines", "cutfiles", "pattern", "sheets", "supplies"),
            List.of("cutting", "pricing"),
            List.of("orders"),
            List.of("boards", "payments", "progress"),
            List.of("printing", "planning", "wood"),
            List.of("offers", "proofs", "bench", "placing"),
            List.of("papers", "insights", "delivery", "letters"),
            List.of("access", "shell", "database", "demo"));

    static final JavaClasses HOUSE = new ClassFileImporter().importPath(classesOf(PuzzleWorkshop.class));

    private static final DescribedPredicate<JavaClass> A_RECORD_AN_ENUM_OR_SEALED = describe(
            "a record, an enum or sealed",
            type -> type.isRecord() || type.isEnum() || type.reflect().isSealed());

    /** Rules that read the whole house stand in one class: it is read once for all of them, which takes longest. */
    @Nested
    class Packages extends PackageRules {}

    @Nested
    class StyleSheets extends StyleSheetRules {}

    @Test
    void every_room_has_a_floor() {
        TreeSet<String> rooms = new TreeSet<>();
        HOUSE.forEach(type -> rooms.add(roomOf(type)));
        rooms.remove("");
        assertThat(FLOORS.stream().flatMap(List::stream).toList()).containsExactlyInAnyOrderElementsOf(rooms);
    }

    @Test
    void no_room_knows_a_room_above_it() {
        TreeSet<String> climbing = new TreeSet<>();
        for (JavaClass type : HOUSE) {
            type.getDirectDependenciesFromSelf().stream()
                    .filter(d -> floorOf(d.getTargetClass()) > floorOf(type) && floorOf(type) > 0)
                    .forEach(d -> climbing.add(d.getDescription()));
        }
        assertThat(climbing).as("uses of a room on a higher floor").isEmpty();
    }

    @Test
    void quantities_and_geometry_know_no_framework() {
        noClasses()
                .that()
                .resideInAnyPackage("puzzleworkshop.measure..", "puzzleworkshop.geometry..", "puzzleworkshop.camera..")
                .and()
                .doNotHaveSimpleName("package-info")
                .should()
                .dependOnClassesThat(aFramework())
                .check(HOUSE);
    }

    @Test
    void what_the_trade_speaks_of_knows_no_framework() {
        noClasses()
                .that(A_RECORD_AN_ENUM_OR_SEALED)
                .and()
                .resideOutsideOfPackages(
                        "..ui..",
                        "puzzleworkshop.display..",
                        "puzzleworkshop.shell..",
                        "puzzleworkshop.access..",
                        "puzzleworkshop.database..")
                .should()
                .dependOnClassesThat(aFramework())
                .allowEmptyShould(true)
                .check(HOUSE);
    }

    @Test
    void screens_stand_in_the_ui_package_of_their_room() {
        classes()
                .that()
                .areAnnotatedWith("com.vaadin.flow.router.Route")
                .should()
                .resideInAnyPackage("puzzleworkshop.*.ui..", "puzzleworkshop.shell..")
                .allowEmptyShould(true)
                .check(HOUSE);
    }

    @Test
    void only_the_words_at_the_start_are_printed() {
        noClasses()
                .that()
                .doNotHaveFullyQualifiedName("puzzleworkshop.database.StartupBanner")
                .and()
                .doNotHaveFullyQualifiedName("puzzleworkshop.access.StartCode")
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .check(HOUSE);
    }

    @Test
    void what_is_printed_has_its_letters_from_one_place() {
        noClasses()
                .that()
                .doNotHaveFullyQualifiedName("puzzleworkshop.display.PaperFonts")
                .should()
                .callMethodWhere(describe(
                        "makes a font",
                        call -> call.getName().equals("createFont")
                                && call.getTargetOwner().getPackageName().startsWith("org.openpdf")))
                .orShould()
                .dependOnClassesThat()
                .haveFullyQualifiedName("org.openpdf.text.FontFactory")
                .check(HOUSE);
    }

    @Test
    void time_comes_from_a_clock_and_from_no_old_calendar() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName("java.util.Date")
                .orShould()
                .dependOnClassesThat()
                .haveFullyQualifiedName("java.util.Calendar")
                .check(HOUSE);
    }

    @Test
    void nobody_asks_the_machine_what_time_it_is_past_the_clock() {
        noClasses()
                .that()
                // Watches the database before there is any bean, and tells a moment for the log only.
                .doNotHaveFullyQualifiedName("puzzleworkshop.database.EmbeddedServer")
                .should()
                .callMethodWhere(describe(
                        "asks for now without a clock",
                        call -> call.getName().equals("now")
                                && call.getTargetOwner().getPackageName().equals("java.time")
                                && call.getTarget().getRawParameterTypes().isEmpty()))
                .orShould()
                .callMethod(System.class, "currentTimeMillis")
                .check(HOUSE);
    }

    /** Limits, and what is said when a file is refused, stand in one place. */
    @Test
    void no_screen_takes_files_in_any_other_way_than_by_the_one_field_for_them() {
        noClasses()
                .that()
                .areNotAssignableTo(FileUpload.class)
                .should()
                .dependOnClassesThat()
                .areAssignableTo(UploadHandler.class)
                .orShould()
                .callConstructor(Upload.class)
                .check(HOUSE);
    }

    /** A field that takes what it cannot read for empty has cost money before. */
    @Test
    void numbers_with_a_point_are_typed_into_the_one_field_that_says_what_it_cannot_read() {
        noClasses()
                .that()
                .doNotHaveFullyQualifiedName("puzzleworkshop.display.blocks.AmountField")
                .should()
                .callConstructorWhere(describe(
                        "makes a bare field for a number",
                        call -> call.getTargetOwner().getSimpleName().equals("BigDecimalField")))
                .check(HOUSE);
    }

    private static DescribedPredicate<JavaClass> aFramework() {
        return resideInAnyPackage("org.springframework..", "com.vaadin..", "jakarta..", "java.sql..")
                .as("a framework");
    }

    private static String roomOf(JavaClass type) {
        String[] parts = type.getPackageName().split("\\.");
        return parts.length > 1 && parts[0].equals("puzzleworkshop") ? parts[1] : "";
    }

    /** 1 is the ground; 0 for what is no room. */
    private static int floorOf(JavaClass type) {
        String room = roomOf(type);
        for (int floor = 0; floor < FLOORS.size(); floor++) {
            if (FLOORS.get(floor).contains(room)) {
                return floor + 1;
            }
        }
        return 0;
    }

    private static Path classesOf(Class<?> type) {
        try {
            return Paths.get(
                    type.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }
}
