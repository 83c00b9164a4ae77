package puzzleworkshop.database;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Has Spring Boot print a {@link CannotStart} as a sentence and a remedy instead of a stack trace. */
class CannotStartInWords extends AbstractFailureAnalyzer<CannotStart> {

    @Override
    protected FailureAnalysis analyze(Throwable rootFailure, CannotStart cause) {
        return new FailureAnalysis(cause.getMessage(), cause.remedy(), cause);
    }
}
