namespace ToolLedger.Reports;

/// <summary>The style sheet of an HTML page. Colours only repeat what words and shapes say; every text has a contrast of 4.5 to 1 at least in both schemes (WCAG 2.2, 1.4.3).</summary>
internal static class HtmlStyle
{
    internal const string Screen = """
        :root{color-scheme:light dark;--paper:#fff;--sheet:#f4f5f3;--ink:#1c2024;--soft:#4e555c;--rule:#c9cdc8;--strong:#6b7278;--link:#174f86;--ok:#1d5c38;--look:#7a4a00;--act:#9c1c1c;--ok-bg:#e9f3ec;--look-bg:#fbf1dc;--act-bg:#fbe9e7;--mark:#20506f}
        @media (prefers-color-scheme:dark){:root{--paper:#15181a;--sheet:#1e2225;--ink:#e8eaea;--soft:#b3babf;--rule:#3d444a;--strong:#8b949b;--link:#9cc8f2;--ok:#93d6ab;--look:#f0c476;--act:#ffaba2;--ok-bg:#18291f;--look-bg:#2e2612;--act-bg:#351b19;--mark:#9cc9e6}}
        *{box-sizing:border-box}
        html{-webkit-text-size-adjust:100%;text-size-adjust:100%;scroll-padding-top:1rem}
        body{margin:0;font-variant-ligatures:none;background:var(--paper);color:var(--ink);font:1rem/1.5 system-ui,"Liberation Sans",Arial,sans-serif;overflow-wrap:anywhere}
        header,main{max-width:78rem;margin:0 auto;padding:0 1.25rem}
        main:focus{outline:none}
        h1{font-size:1.35rem;line-height:1.25;margin:1rem 0 .25rem}
        h2{font-size:1.25rem;line-height:1.3;margin:0 0 .75rem}
        h3{font-size:1.05rem;line-height:1.35;margin:1.75rem 0 .5rem}
        p{margin:.4rem 0;max-width:75ch}
        ul{margin:.5rem 0;padding-left:1.25rem}
        li{margin:.2rem 0;max-width:80ch}
        a{color:var(--link)}
        a:focus-visible,summary:focus-visible,.scroll:focus-visible{outline:3px solid var(--link);outline-offset:2px;border-radius:2px}
        code{font:.8125rem/1.4 ui-monospace,"Liberation Mono",monospace}
        .vh{position:absolute;width:1px;height:1px;margin:-1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
        .defs{position:absolute}
        .skip{position:absolute;left:1rem;top:-4rem;background:var(--paper);padding:.5rem 1rem;border:2px solid var(--link);z-index:1}
        .skip:focus{top:.5rem}
        .st{display:inline-flex;align-items:center;gap:.35em;font-weight:700;font-size:.8125rem;line-height:1.35;letter-spacing:.02em;padding:.1em .5em;border:1px solid currentColor;border-radius:3px;color:var(--soft)}
        .st.ok{color:var(--ok);background:var(--ok-bg)}
        .st.look{color:var(--look);background:var(--look-bg);border-style:dashed}
        .st.act{color:var(--act);background:var(--act-bg);border-width:2px}
        .g{flex:none;width:.8em;height:.8em}
        section{margin:2rem 0 0;padding-top:1.25rem;border-top:1px solid var(--rule)}
        section.first{border-top:0;margin-top:0;padding-top:.5rem}
        .cards{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,24rem),1fr));gap:1rem;align-items:start}
        .card{background:var(--sheet);border:1px solid var(--rule);border-left:.4rem solid var(--strong);border-radius:4px;padding:.75rem 1rem 1rem}
        .card.ok{border-left-color:var(--ok)}.card.look{border-left-color:var(--look)}.card.act{border-left-color:var(--act)}
        .card h3{margin:0 0 .5rem;font-size:1rem}
        .card p,.then{font-size:.9375rem;margin:.35rem 0}
        .then{padding-left:1.5rem}
        .counts{list-style:none;padding:0;margin:.5rem 0;font-weight:600}
        .do{border-top:1px solid var(--rule);margin-top:.5rem;padding-top:.5rem}
        .do .lead,.summary a{font-weight:700}
        .what{font-weight:600}
        .next,.stop{font-weight:600}
        td .what,td .next,td p{margin:.15rem 0}
        .alike{padding:0;list-style:none}
        .alike li{margin:.35rem 0;max-width:none}
        .summary .do{border:0;margin:0;padding:0}
        .summary .lead,.summary .what{display:inline-block;margin-right:.5rem}
        .summary p{margin:.15rem 0}
        .cautions{margin-top:1.25rem;padding-top:1rem}
        .cautions h2,nav h2{font-size:1rem;margin-bottom:.25rem}
        .cautions ul{columns:3 20rem;column-gap:2rem;font-size:.875rem;line-height:1.4;margin:0;padding-left:1.1rem}
        @media (min-width:68rem){.top{display:grid;grid-template-columns:minmax(0,1fr) 18.5rem;gap:0 1.5rem;align-items:start}.top .cautions{border-top:0;margin:0;padding-top:.5rem}.top .cautions ul{columns:auto;font-size:.8125rem}.cards{grid-template-columns:repeat(auto-fit,minmax(min(100%,21rem),1fr))}}
        .cautions li,nav li{break-inside:avoid}
        nav ul ul{margin:.1rem 0 .5rem;padding-left:1.1rem}
        nav{margin:1.25rem 0 0;padding-top:1rem;border-top:1px solid var(--rule)}
        nav>ul{columns:2 26rem;column-gap:2rem;margin:0;font-size:.9375rem}
        table{border-collapse:collapse;width:100%;margin:.5rem 0;text-align:left}
        th,td{padding:.4rem .75rem .4rem 0;vertical-align:top}
        caption{text-align:left;font-weight:600;font-size:.875rem;padding:.25rem 0}
        thead th{font-size:.8125rem;color:var(--soft);border-bottom:2px solid var(--rule);white-space:nowrap}
        .rows>tbody>tr,.digests tr{border-bottom:1px solid var(--rule)}
        .rows>tbody>tr>th{font-weight:600;white-space:nowrap}
        .rows>tbody>tr>.word{width:1%;white-space:nowrap}
        .keyed>tbody>tr>th{width:1%;text-align:right;font-variant-numeric:tabular-nums}
        .keyed>thead th:first-child{text-align:right}
        .digests th{font-weight:400;width:40%}
        .ev{margin:.35rem 0;font-size:.9375rem}
        .ev summary{cursor:pointer;color:var(--link);padding:.15rem 0;width:fit-content}
        .ev[open]{background:var(--sheet);border:1px solid var(--rule);border-radius:4px;padding:.25rem .75rem .5rem}
        .ev table{font-size:.875rem}
        .tl th,.tl td{padding:.2rem .75rem .2rem 0}
        .tl th[scope=rowgroup]{padding-top:.6rem;font-weight:600}
        .tl th[scope=row]{width:7.5rem;min-width:5rem;font-weight:400;color:var(--soft)}
        .tl td{display:flex;gap:0 1rem;align-items:flex-start}
        .tl td span{flex:0 0 21rem;font-variant-numeric:tabular-nums}
        .strip{display:block;flex:1 1 auto;width:100%;height:1.25rem;margin:.1rem 0;background:var(--paper)}
        .strip path{fill:none;vector-effect:non-scaling-stroke}
        .base{stroke:var(--strong);stroke-width:1}
        .mk{stroke:var(--mark);stroke-width:2.5}
        .short{stroke:var(--soft);stroke-width:2}
        .scroll{overflow-x:auto;contain:inline-size}
        .risk,.terms{max-width:52rem}
        .risk th{width:17rem;font-weight:600}
        .risk tr,.terms tr{border-bottom:1px solid var(--rule)}
        .terms tbody th{font-weight:400}
        .terms td,.terms>thead th:last-child{text-align:right;white-space:nowrap;font-variant-numeric:tabular-nums}
        .terms tfoot th{font-weight:700}
        .models{font-size:.9375rem}
        .models tr{border-bottom:1px solid var(--rule)}
        .models tbody th{font-weight:600;white-space:nowrap}
        .sign{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,11rem),1fr));gap:1rem;max-width:none;margin:.75rem 0}
        .sign>span{font-size:.8125rem;color:var(--soft);display:flex;flex-direction:column-reverse}
        .gap{display:block;height:2.75rem;overflow:hidden;color:transparent;border-bottom:1px solid var(--ink)}
        @media (prefers-reduced-motion:no-preference){html{scroll-behavior:smooth}}
        @media (forced-colors:active){.mk{stroke:CanvasText}.base{stroke:GrayText}}

        """;

    internal const string Narrow = """
        @media (max-width:40rem){
        header,main{padding:0 .75rem}
        .rows>thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
        .rows,.rows>tbody{display:block}
        .rows>tbody>tr{display:grid;grid-template-columns:auto 1fr;gap:.25rem .75rem;padding:.6rem 0;align-items:baseline}
        .rows>tbody>tr>th,.rows>tbody>tr>td{display:block;width:auto;padding:0}
        .rows>tbody>tr>td:last-child{grid-column:1/-1;min-width:0}
        .rows>tbody>tr>.word{width:auto}
        .ev[open]{padding:.25rem .5rem .5rem}
        .tl th[scope=row]{width:5rem}
        .tl td{display:block}
        .risk,.risk caption,.risk tbody,.risk tr,.risk th,.risk td,.models,.models caption,.models tbody,.models tr,.models th,.models td,.digests,.digests tbody,.digests tr,.digests th,.digests td{display:block;width:auto;padding-right:0}
        .risk th,.digests th{padding-bottom:0}
        .risk td,.digests td,.models td{padding-top:0}
        .models>thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
        .models td{padding-bottom:.15rem}
        .terms,.terms>*{display:block}
        .terms tr{display:flex;flex-wrap:wrap;justify-content:space-between}
        .terms th,.terms td{display:block;padding-right:0}
        .terms tbody th,.terms tfoot th{flex:1 0 100%;padding-bottom:0}
        .terms td{margin-left:auto;padding-top:0;white-space:normal}
        .terms caption{display:block}
        .terms>thead th{border:0}
        }

        """;

    internal const string Print = """
        @page{margin:18mm 14mm 16mm;font:8pt Arial,sans-serif;font-variant-ligatures:none}
        @media print{
        :root{color-scheme:light;--paper:#fff;--sheet:#fff;--ink:#000;--soft:#333;--rule:#999;--strong:#555;--link:#000;--ok:#000;--look:#000;--act:#000;--ok-bg:#fff;--look-bg:#fff;--act-bg:#fff;--mark:#000}
        html{font-size:8.5pt}
        body{line-height:1.35}
        header,main{max-width:none;padding:0}
        nav,.skip{display:none}
        a{text-decoration:none}
        h1{margin-top:0}h3{margin-top:1rem}
        section{margin-top:1rem;padding-top:.75rem}
        th,td{padding-top:.2rem;padding-bottom:.2rem}
        .ev[open]{border:0;padding:0}
        .ev summary{color:#000;font-weight:600}
        .summary td p{break-inside:auto}
        h1,h2,h3,caption,summary,thead{break-after:avoid}
        .rows>tbody>tr:first-child,.sign{break-before:avoid}
        .kit{break-before:page;border-top:0;margin-top:0;padding-top:0}
        .card,tr,li,p,.sign,.tl tbody,.risk,.terms{break-inside:avoid}
        .rows>tbody>tr:has(details){break-inside:auto}
        .cards{grid-template-columns:repeat(2,1fr)}
        .top{display:block}
        .cautions ul,.top .cautions ul{columns:2}
        details::details-content{content-visibility:visible;block-size:auto;height:auto}
        .scroll{overflow:visible;contain:none}
        .strip{min-width:0;max-width:none}
        .gap{height:14mm}
        }

        """;
}
