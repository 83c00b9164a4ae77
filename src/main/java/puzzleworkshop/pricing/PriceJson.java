package puzzleworkshop.pricing;

import com.fasterxml.jackson.annotation.JsonAutoDetect.Visibility;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Writes a kept price with its components only, amounts as plain decimals without loss. */
final class PriceJson {

    private static final JsonMapper JSON = JsonMapper.builder()
            .changeDefaultVisibility(all -> all.withGetterVisibility(Visibility.NONE)
                    .withIsGetterVisibility(Visibility.NONE)
                    .withFieldVisibility(Visibility.ANY))
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private PriceJson() {}

    static String write(KeptPrice price) {
        return JSON.writeValueAsString(price);
    }

    static KeptPrice read(String json) {
        return JSON.readValue(json, KeptPrice.class);
    }
}
