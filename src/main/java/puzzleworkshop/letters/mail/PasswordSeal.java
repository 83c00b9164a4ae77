package puzzleworkshop.letters.mail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Optional;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Encrypts the mail server's password with a key in a file of the data folder that only its owner may read (AES-256 in
 * Galois/Counter Mode, NIST SP 800-38D: a random nonce of 96 bits, a tag of 128). So neither a backup nor a copy of the
 * database gives it away; where the key is gone the password has to be typed again.
 */
@Component
class PasswordSeal {

    private static final int KEY_BYTES = 32;
    private static final int NONCE_BYTES = 12;
    private static final int TAG_BITS = 128;

    private final SecureRandom random = new SecureRandom();
    private final Path keyFile;

    PasswordSeal(@Value("${puzzleworkshop.data:}") String folder) {
        Path home = folder.isBlank() ? Path.of(System.getProperty("user.home"), ".puzzle-workshop") : Path.of(folder);
        this.keyFile = home.resolve("mail.key");
    }

    byte[] seal(String password) {
        byte[] nonce = new byte[NONCE_BYTES];
        random.nextBytes(nonce);
        byte[] sealed = run(Cipher.ENCRYPT_MODE, key(), nonce, password.getBytes(StandardCharsets.UTF_8))
                .orElseThrow();
        byte[] all = Arrays.copyOf(nonce, NONCE_BYTES + sealed.length);
        System.arraycopy(sealed, 0, all, NONCE_BYTES, sealed.length);
        return all;
    }

    /** Empty when the key is another one or the sealed password was changed. */
    Optional<String> open(byte[] sealed) {
        return existingKey()
                .filter(key -> sealed.length > NONCE_BYTES)
                .flatMap(key -> run(
                        Cipher.DECRYPT_MODE,
                        key,
                        Arrays.copyOf(sealed, NONCE_BYTES),
                        Arrays.copyOfRange(sealed, NONCE_BYTES, sealed.length)))
                .map(bytes -> new String(bytes, StandardCharsets.UTF_8));
    }

    private static Optional<byte[]> run(int mode, byte[] key, byte[] nonce, byte[] text) {
        try {
            Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
            cipher.init(mode, new SecretKeySpec(key, "AES"), new GCMParameterSpec(TAG_BITS, nonce));
            return Optional.of(cipher.doFinal(text));
        } catch (javax.crypto.AEADBadTagException other) {
            return Optional.empty();
        } catch (GeneralSecurityException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private synchronized byte[] key() {
        return existingKey().orElseGet(this::makeKey);
    }

    private byte[] makeKey() {
        byte[] key = new byte[KEY_BYTES];
        random.nextBytes(key);
        try {
            Files.createDirectories(keyFile.getParent());
            if (keyFile.getFileSystem().supportedFileAttributeViews().contains("posix")) {
                Files.createFile(
                        keyFile, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            } else {
                Files.createFile(keyFile);
            }
            Files.write(keyFile, key, StandardOpenOption.SYNC);
            return key;
        } catch (FileAlreadyExistsException damaged) {
            // a key of another length was never written by us; it is left for whoever knows what it is
            throw new UncheckedIOException(damaged);
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    private Optional<byte[]> existingKey() {
        try {
            return Optional.of(Files.readAllBytes(keyFile)).filter(key -> key.length == KEY_BYTES);
        } catch (NoSuchFileException none) {
            return Optional.empty();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
