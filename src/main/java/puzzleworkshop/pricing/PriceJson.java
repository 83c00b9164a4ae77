package puzzleworkshop.pricing;

import com.fasterxml.jackson.annotation.JsonAutoDetect.Visibility;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.pricing.cost.PriceQuestion;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes a kept price with its components only, amounts as plain decimals without loss. The document says in which version
 * it is written, so that a price is never read as something it was not: of another version, or with a part this program
 * does not know, it is refused. Whoever renames or removes a component raises the version and reads the ones before.
 */
final class PriceJson {

    private static final JsonMapper JSON = JsonMapper.builder()
            .changeDefaultVisibility(all -> all.withGetterVisibility(Visibility.NONE)
                    .withIsGetterVisibility(Visibility.NONE)
                    .withFieldVisibility(Visibility.ANY))
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    static final int VERSION = 1;

    /** @param version absent in what was written before documents said it: then it is the first */
    private record Document(Integer version, PriceQuestion question, PriceAnswer answer) {}

    private PriceJson() {}

    static String write(KeptPrice price) {
        return JSON.writeValueAsString(new Document(VERSION, price.question(), price.answer()));
    }

    /** @throws Refused when it was written by another program than those known here */
    static KeptPrice read(String json) {
        try {
            Document document = JSON.readValue(json, Document.class);
            requireKnown(document.version());
            if (document.question() == null || document.answer() == null) {
                throw new Refused("pricing.kept.unreadable");
            }
            return new KeptPrice(document.question(), document.answer());
        } catch (JacksonException unreadable) {
            requireKnown(versionOf(json));
            throw new Refused("pricing.kept.unreadable");
        }
    }

    private static Integer versionOf(String json) {
        try {
            JsonNode version = JSON.readTree(json).get("version");
            return version == null ? null : version.asInt(0);
        } catch (JacksonException noJson) {
            return null;
        }
    }

    private static void requireKnown(Integer version) {
        if (version != null && version != VERSION) {
            throw new Refused("pricing.kept.version", version, VERSION);
        }
    }
}
