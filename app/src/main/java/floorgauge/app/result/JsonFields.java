package floorgauge.app.result;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Writes named JSON values in the order asked for. Measured numbers are rounded to 0.0001 of their unit, a tenth of a
 * millimetre or of a millisecond, far below any error carried with them.
 *
 * @param generator where they go
 */
record JsonFields(JsonGenerator generator) {

    private static final int DECIMALS = 4;

    /** Writes the fields of one object. */
    @FunctionalInterface
    interface Fields {
        void write() throws IOException;
    }

    /** Writes the fields of one object of a list. */
    @FunctionalInterface
    interface FieldsOf<T> {
        void write(T value) throws IOException;
    }

    void object(Fields fields) throws IOException {
        generator.writeStartObject();
        fields.write();
        generator.writeEndObject();
    }

    void object(String name, Fields fields) throws IOException {
        generator.writeFieldName(name);
        object(fields);
    }

    <T> void array(String name, Collection<T> values, FieldsOf<T> fields) throws IOException {
        generator.writeArrayFieldStart(name);
        for (T value : values) {
            object(() -> fields.write(value));
        }
        generator.writeEndArray();
    }

    void text(String name, String value) throws IOException {
        generator.writeStringField(name, value);
    }

    /** An enum constant, in lower case with spaces. */
    void word(String name, Enum<?> value) throws IOException {
        text(name, value.name().toLowerCase(Locale.ROOT).replace('_', ' '));
    }

    void flag(String name, boolean value) throws IOException {
        generator.writeBooleanField(name, value);
    }

    void whole(String name, long value) throws IOException {
        generator.writeNumberField(name, value);
    }

    void number(String name, double value) throws IOException {
        generator.writeFieldName(name);
        rounded(value);
    }

    /** Left out where empty. */
    void number(String name, OptionalDouble value) throws IOException {
        if (value.isPresent()) {
            number(name, value.getAsDouble());
        }
    }

    /** Every digit, for matrices. */
    void exactNumbers(String name, Collection<Double> values) throws IOException {
        generator.writeArrayFieldStart(name);
        for (double value : values) {
            generator.writeNumber(value);
        }
        generator.writeEndArray();
    }

    /** A column of a table; null where a row has no value. */
    void column(String name, Collection<OptionalDouble> values) throws IOException {
        generator.writeArrayFieldStart(name);
        for (OptionalDouble value : values) {
            if (value.isPresent()) {
                rounded(value.getAsDouble());
            } else {
                generator.writeNull();
            }
        }
        generator.writeEndArray();
    }

    void wholes(String name, Collection<Integer> values) throws IOException {
        generator.writeArrayFieldStart(name);
        for (int value : values) {
            generator.writeNumber(value);
        }
        generator.writeEndArray();
    }

    void texts(String name, Collection<String> values) throws IOException {
        generator.writeArrayFieldStart(name);
        for (String value : values) {
            generator.writeString(value);
        }
        generator.writeEndArray();
    }

    private void rounded(double value) throws IOException {
        BigDecimal rounded = BigDecimal.valueOf(value)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        generator.writeNumber(rounded.signum() == 0 ? "0" : rounded.toPlainString());
    }
}
