package org.fusewright.core.check;

/** The rules that a kit is held against; the codes are stable and known to outsiders. */
public enum CheckCode {
    RUNNING_LOAD("running-load"),
    INRUSH("inrush"),
    OVERLOAD_PROTECTION("overload-protection"),
    SHORT_CIRCUIT_WITHSTAND("short-circuit-withstand"),
    INTERRUPTING_CAPACITY("interrupting-capacity"),
    FAULT_CLEARING("fault-clearing"),
    VOLTAGE_DROP("voltage-drop"),
    TERMINAL_CURRENT("terminal-current"),
    TERMINAL_FIT("terminal-fit"),
    SEAL_FIT("seal-fit"),
    ONE_LEAD_PER_CAVITY("one-lead-per-cavity"),
    CAP_CLEARANCE("cap-clearance"),
    RELAY_CONTACT("relay-contact"),
    RELAY_COIL("relay-coil"),
    BLOCK_CURRENT("block-current"),
    FEED_LOAD("feed-load"),
    SELECTIVITY("selectivity"),
    SOURCE_PROTECTION("source-protection"),
    CHARGING_BALANCE("charging-balance"),
    AUTOMATIC_RESTART("automatic-restart"),
    WEDGE_FITTED("wedge-fitted"),
    CAVITIES_PLUGGED("cavities-plugged"),
    STOCKED("stocked"),
    LIGHTING_SEPARATION("lighting-separation"),
    SPLICE_PLACEMENT("splice-placement"),
    PLACE_KEPT("place-kept");

    private final String code;

    CheckCode(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
