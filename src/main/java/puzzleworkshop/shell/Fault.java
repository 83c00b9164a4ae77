package puzzleworkshop.shell;

import java.io.IOException;
import java.util.UUID;
import org.apache.catalina.connector.ClientAbortException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;

/**
 * Something the program did not expect. It is logged once with everything known about it; the person sees a sentence and
 * the fault's mark, by which it is found in the log.
 */
record Fault(String mark) {

    private static final Logger LOG = LoggerFactory.getLogger(Fault.class);

    /** The person closed the page or lost the connection while an answer was on its way: nothing that we could mend. */
    static boolean isBrowserGone(Throwable thrown) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            String said = String.valueOf(t.getMessage());
            if (t instanceof ClientAbortException
                    || t instanceof AsyncRequestNotUsableException
                    || t instanceof IOException
                            && (said.startsWith("Broken pipe") || said.startsWith("Connection reset"))) {
                return true;
            }
        }
        return false;
    }

    static Fault log(String where, Throwable cause) {
        Fault fault = new Fault(UUID.randomUUID().toString().substring(0, 8));
        LOG.error("Fault {} in {}", fault.mark, where, cause);
        return fault;
    }
}
