package puzzleworkshop.shell;

import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Something the program did not expect. It is logged once with everything known about it; the person sees a sentence and
 * the fault's mark, by which it is found in the log.
 */
record Fault(String mark) {

    private static final Logger LOG = LoggerFactory.getLogger(Fault.class);

    static Fault log(String where, Throwable cause) {
        Fault fault = new Fault(UUID.randomUUID().toString().substring(0, 8));
        LOG.error("Fault {} in {}", fault.mark, where, cause);
        return fault;
    }
}
