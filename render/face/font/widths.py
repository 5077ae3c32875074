
from fontTools.ttLib import TTFont
import sys
out=[]
for f in ("DejaVuSans","DejaVuSans-Bold"):
    t=TTFont(""+f+".ttf"); c=t.getBestCmap(); h=t["hmtx"]; u=t["head"].unitsPerEm
    out.append({r:-(-h[g][0]*1000//u) for r,g in c.items()})
RANGES=[(0xA0,0x24F),(0x370,0x52F),(0x2010,0x2044),(0x20A0,0x20BF),(0x2116,0x2122),(0x2150,0x215F),(0x2190,0x2195),(0x2212,0x2212),(0x2248,0x2248),(0x2264,0x2265),(0x2610,0x2612)]
print("// Code generated from the fonts of render/face (their font/README.md tells how); DO NOT EDIT.\n\npackage drawing\n")
print("// furtherWidths are the advance widths of letters beyond ASCII, in thousandths of\n// their size, by the first of a row of characters.")
print("var furtherWidths = [...]struct {\n\tfirst       rune\n\tplain, bold []uint16\n}{")
for a,b in RANGES:
    print("\t{"+hex(a)+",")
    for w in out:
        v=[str(w.get(r,1000)) for r in range(a,b+1)]
        print("\t\t[]uint16{")
        for i in range(0,len(v),24): print("\t\t\t"+", ".join(v[i:i+24])+",")
        print("\t\t},")
    print("\t},")
print("}")
