package evenwood.journal;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;

/** A record as it lies in the store: JSON, packed. Anything that can unpack zlib and read JSON can read it in twenty years. */
final class StoredForm {
    private static final JsonFactory FACTORY = new JsonFactory();

    private StoredForm() { }

    static byte[] packed(Record record) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (OutputStream packing = new DeflaterOutputStream(bytes)) {
            packing.write(json(record).getBytes(StandardCharsets.UTF_8));
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return bytes.toByteArray();
    }

    static String json(Record record) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator json = FACTORY.createGenerator(bytes)) {
            new RecordWriter(json).write(record);
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return bytes.toString(StandardCharsets.UTF_8);
    }

    /** @throws JournalProblem when it is no such record any more */
    static <T extends Record> T unpacked(byte[] packed, Class<T> type) {
        try (JsonParser json = FACTORY.createParser(new InflaterInputStream(new ByteArrayInputStream(packed)))) {
            return new RecordReader(json).read(type);
        } catch (IOException | IllegalArgumentException problem) {
            throw new JournalProblem("journal: one entry is damaged (" + problem.getMessage() + "); the others are not touched by it; a backup may still have it", problem);
        }
    }

    /** The same for equal records, so that a rig is kept once however many takes were made with it. */
    static String fingerprint(Record record) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(json(record).getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException cannotHappen) {
            throw new IllegalStateException("every Java has SHA-256", cannotHappen);
        }
    }
}
