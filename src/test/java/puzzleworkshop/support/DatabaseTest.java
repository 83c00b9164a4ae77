package puzzleworkshop.support;

import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Tag;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.test.context.ContextConfiguration;
import org.springframework.test.context.TestExecutionListeners;
import puzzleworkshop.PuzzleWorkshop;

/**
 * Marks a test that runs in the whole program on a real PostgreSQL. All such tests share one server and one application
 * context; the database is brought back to what the migrations left before each test class (not between its methods:
 * add {@code @Transactional} to a test that should leave nothing to the next one, or call {@link CleanDatabase#now}).
 *
 * <p>To keep the one context, do not add {@code @MockitoBean}, properties or profiles to the test.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@Tag("database")
@SpringBootTest(classes = PuzzleWorkshop.class)
@ContextConfiguration(initializers = OnTestServer.class)
@TestExecutionListeners(
        listeners = CleanDatabase.class,
        mergeMode = TestExecutionListeners.MergeMode.MERGE_WITH_DEFAULTS)
public @interface DatabaseTest {}
