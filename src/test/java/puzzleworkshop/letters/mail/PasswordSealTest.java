package puzzleworkshop.letters.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PasswordSealTest {

    @TempDir
    Path folder;

    @Test
    void what_was_sealed_is_opened_with_the_same_key_only() throws IOException {
        PasswordSeal seal = new PasswordSeal(folder.toString());
        byte[] sealed = seal.seal("correct horse – ß");
        assertThat(new String(sealed, StandardCharsets.ISO_8859_1)).doesNotContain("horse");
        assertThat(new PasswordSeal(folder.toString()).open(sealed)).contains("correct horse – ß");
        assertThat(seal.seal("correct horse – ß")).as("no two are alike").isNotEqualTo(sealed);
        sealed[sealed.length - 1] ^= 1;
        assertThat(seal.open(sealed)).as("changed").isEmpty();
        byte[] again = seal.seal("x");
        Files.delete(folder.resolve("mail.key"));
        assertThat(seal.open(again)).as("without its key").isEmpty();
        seal.seal("y");
        assertThat(seal.open(again)).as("with another key").isEmpty();
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void only_its_owner_may_read_the_key() throws IOException {
        new PasswordSeal(folder.toString()).seal("x");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("mail.key"))))
                .isEqualTo("rw-------");
    }
}
