package dev.reelproof.store.result;

import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;
import org.jspecify.annotations.Nullable;

/**
 * All sweeps of a record in one block: a version byte, then, compressed with Deflate, the grids in MHz and for each sweep what it
 * is and its two columns.
 *
 * <p>A column of doubles is written with the highest bytes of all values first, then the next bytes, and so on: neighbouring
 * values share their high bytes, which then compress well. Nothing is rounded.
 */
final class SweepBlock {
    private static final int VERSION = 1;
    private static final int NONE = 0;

    private SweepBlock() {}

    static byte[] write(List<CorrectedSweep> sweeps) {
        Map<FrequencyGrid, Integer> grids = new LinkedHashMap<>();
        sweeps.forEach(sweep -> grids.putIfAbsent(sweep.grid(), grids.size()));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        bytes.write(VERSION);
        Deflater deflater = new Deflater(Deflater.BEST_SPEED);
        try (DataOutputStream out = new DataOutputStream(new DeflaterOutputStream(bytes, deflater))) {
            out.writeInt(grids.size());
            for (FrequencyGrid grid : grids.keySet()) {
                out.writeInt(grid.size());
                writeColumn(out, grid.toArray());
            }
            out.writeInt(sweeps.size());
            for (CorrectedSweep sweep : sweeps) {
                out.writeUTF(sweep.property().id());
                writeSubject(out, sweep.subject());
                out.writeInt(Objects.requireNonNull(grids.get(sweep.grid()), "the grid of each sweep was numbered"));
                out.writeUTF(sweep.unit());
                out.writeBoolean(sweep.derived());
                writeColumn(out, sweep.measured());
                writeColumn(out, sweep.corrected());
            }
        } catch (IOException e) {
            throw new UncheckedIOException("a block of sweeps could not be written", e);
        } finally {
            deflater.end();
        }
        return bytes.toByteArray();
    }

    static List<CorrectedSweep> read(byte[] block) {
        if (block.length == 0 || block[0] != VERSION) {
            throw new IllegalStateException("a block of sweeps has version " + (block.length == 0 ? "none" : block[0])
                    + "; this program reads version " + VERSION);
        }
        try (DataInputStream in =
                new DataInputStream(new InflaterInputStream(new ByteArrayInputStream(block, 1, block.length - 1)))) {
            List<FrequencyGrid> grids = new ArrayList<>();
            int gridCount = in.readInt();
            for (int i = 0; i < gridCount; i++) {
                grids.add(FrequencyGrid.ofMegahertz(readColumn(in, in.readInt())));
            }
            List<CorrectedSweep> sweeps = new ArrayList<>();
            int sweepCount = in.readInt();
            for (int i = 0; i < sweepCount; i++) {
                Property property = Property.named(in.readUTF());
                Subject subject = readSubject(in);
                FrequencyGrid grid = grids.get(in.readInt());
                String unit = in.readUTF();
                boolean derived = in.readBoolean();
                double[] measured = readColumn(in, grid.size());
                double[] corrected = readColumn(in, grid.size());
                sweeps.add(new CorrectedSweep(property, subject, grid, measured, corrected, unit, derived));
            }
            return sweeps;
        } catch (IOException e) {
            throw new UncheckedIOException("a block of sweeps could not be read", e);
        }
    }

    private static void writeSubject(DataOutputStream out, Subject subject) throws IOException {
        out.writeInt(subject.pair() == null ? NONE : subject.pair());
        out.writeInt(subject.partner() == null ? NONE : subject.partner());
        out.writeUTF(subject.conductor() == null ? "" : subject.conductor().name());
        out.writeUTF(subject.end() == null ? "" : subject.end().name());
        out.writeInt(subject.sample() == null ? NONE : subject.sample());
    }

    private static Subject readSubject(DataInputStream in) throws IOException {
        Integer pair = numberOrNone(in.readInt());
        Integer partner = numberOrNone(in.readInt());
        String conductor = in.readUTF();
        String end = in.readUTF();
        Integer sample = numberOrNone(in.readInt());
        return new Subject(
                pair,
                partner,
                conductor.isEmpty() ? null : Conductor.valueOf(conductor),
                end.isEmpty() ? null : End.valueOf(end),
                sample);
    }

    private static @Nullable Integer numberOrNone(int number) {
        return number == NONE ? null : number;
    }

    private static void writeColumn(DataOutputStream out, double[] values) throws IOException {
        byte[] bytes = new byte[values.length * Double.BYTES];
        for (int i = 0; i < values.length; i++) {
            long bits = Double.doubleToRawLongBits(values[i]);
            for (int b = 0; b < Double.BYTES; b++) {
                bytes[b * values.length + i] = (byte) (bits >>> Byte.SIZE * (Double.BYTES - 1 - b));
            }
        }
        out.write(bytes);
    }

    private static double[] readColumn(DataInputStream in, int size) throws IOException {
        byte[] bytes = in.readNBytes(size * Double.BYTES);
        if (bytes.length != size * Double.BYTES) {
            throw new IOException("the block ends within a column");
        }
        double[] values = new double[size];
        for (int i = 0; i < size; i++) {
            long bits = 0;
            for (int b = 0; b < Double.BYTES; b++) {
                bits = bits << Byte.SIZE | bytes[b * size + i] & 0xFF;
            }
            values[i] = Double.longBitsToDouble(bits);
        }
        return values;
    }
}
