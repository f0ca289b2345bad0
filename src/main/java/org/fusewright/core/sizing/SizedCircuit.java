package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.words.Text;

import java.util.List;
import java.util.Optional;

/**
 * A circuit with its device and leads chosen.
 *
 * @param runningA worst running current of its own loads over the supply's voltage range
 * @param carriedA what its device carries: its own loads and those of circuits that share it
 * @param inrushA worst start-up current of its own loads
 * @param device empty when another circuit's device feeds the relay contact
 * @param study of its device and all behind it; empty with the device
 * @param why what decided, in sentences
 */
public record SizedCircuit(
        ResolvedCircuit resolved,
        double runningA,
        double carriedA,
        double inrushA,
        Optional<Device> device,
        List<Lead> leads,
        List<SizedSplice> splices,
        List<SizedLoad> loads,
        Optional<ProtectionStudy> study,
        List<Text> why) {

    public SizedCircuit {
        leads = List.copyOf(leads);
        splices = List.copyOf(splices);
        loads = List.copyOf(loads);
        why = List.copyOf(why);
    }

    public String id() {
        return resolved.id();
    }
}
